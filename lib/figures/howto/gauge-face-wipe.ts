import { arrow } from '../pieces/arrow';
import { area, line, pen, words, type Point } from '../pieces/draw';
import { railShape } from '../pieces/rail-section';
import { tieSide } from '../pieces/track-parts';
import { sketch } from './sketch';

const SCALE = 0.6;
const cloth = (x: number, y: number): Point[] => [
  [x - 12, y - 8],
  [x + 2, y - 12],
  [x + 14, y - 6],
  [x + 12, y + 8],
  [x, y + 12],
  [x - 14, y + 6],
];

export const gaugeFaceWipe = sketch(
  'Feeling the gauge face and the top',
  'Both rails in section. A white cloth is drawn along the gauge face and along the top of each rail, at once on both rails.',
  [
    ...tieSide(20, 166, 280, 14),
    railShape({ at: [70, 56], scale: SCALE }),
    railShape({ at: [250, 56], scale: SCALE }),
    ...[1, -1].flatMap((side) => {
      const x = side === 1 ? 70 : 250;
      return [
        area(cloth(x, 48), 'paper', pen('seriesA', 1.4)),
        area(cloth(x + side * 31, 74), 'paper', pen('seriesA', 1.4)),
        line([x - 6, 48], [x + 6, 46], pen('seriesA', 0.8)),
        line([x + side * 31 - 5, 74], [x + side * 31 + 5, 72], pen('seriesA', 0.8)),
      ];
    }),
    words(160, 40, 'top of rail', { anchor: 'middle', bold: true }),
    ...arrow([126, 36], [88, 44], { ink: 'faint' }),
    ...arrow([194, 36], [232, 44], { ink: 'faint' }),
    words(160, 92, 'gauge face', { anchor: 'middle', bold: true }),
    ...arrow([124, 86], [117, 80], { ink: 'faint', head: 6 }),
    ...arrow([196, 86], [203, 80], { ink: 'faint', head: 6 }),
    words(160, 122, 'both rails,', { anchor: 'middle' }),
    words(160, 136, 'at once', { anchor: 'middle' }),
    words(160, 18, 'greased, damp, dry, rough?', { anchor: 'middle', ink: 'faint' }),
    words(160, 194, 'weather since: write it down', { anchor: 'middle', ink: 'faint' }),
  ],
);
