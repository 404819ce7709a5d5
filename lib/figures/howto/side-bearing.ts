import { leader, upright } from '../pieces/dimension';
import { area, box, line, pen, words } from '../pieces/draw';
import { sketch } from './sketch';

export const sideBearing = sketch(
  'Side bearings, centre plate, wedge',
  'A truck from the end: the car body rests on the centre plate; the gap at the side bearing on each side is the clearance. At the right a friction wedge in the side frame with its rise.',
  [
    box(24, 30, 196, 22, { fill: 'shade', stroke: pen('ink', 1.3) }),
    words(122, 45, 'car body', { anchor: 'middle' }),
    area(
      [
        [96, 52],
        [148, 52],
        [144, 64],
        [100, 64],
      ],
      'paper',
      pen('ink', 1.2),
    ),
    box(92, 64, 60, 8, { fill: 'rail' }),
    area(
      [
        [20, 86],
        [224, 86],
        [224, 102],
        [160, 118],
        [84, 118],
        [20, 102],
      ],
      'paper',
      pen('ink', 1.4),
    ),
    box(92, 72, 60, 14, { fill: 'paper', stroke: pen('ink', 1.2) }),
    words(138, 106, 'truck bolster', { anchor: 'middle' }),
    ...[46, 186].flatMap((x) => [
      box(x, 52, 24, 8, { fill: 'ink', fillOpacity: 0.6 }),
      box(x, 72, 24, 14, { fill: 'paper', stroke: pen('ink', 1.2) }),
    ]),
    ...upright(60, 72, 36, 46, 46, '', {}),
    ...upright(60, 72, 222, 210, 210, '', {}),
    words(30, 138, 'clearance, left', {}),
    words(216, 138, 'right', { anchor: 'end' }),
    line([36, 86], [44, 126], pen('ink', 0.7)),
    line([222, 86], [206, 126], pen('ink', 0.7)),
    ...leader([64, 160], [96, 68], ''),
    words(122, 172, 'centre plate: grease, galling, rim', { anchor: 'middle' }),
    line([236, 24], [236, 182], pen('faint', 0.8)),
    box(250, 60, 14, 92, { fill: 'shade', stroke: pen('ink', 1.2) }),
    area(
      [
        [264, 84],
        [264, 132],
        [290, 132],
        [290, 112],
      ],
      'paper',
      pen('ink', 1.4),
    ),
    line([270, 132], [270, 152], pen('ink', 1, [2, 2])),
    line([284, 132], [284, 152], pen('ink', 1, [2, 2])),
    line([264, 70], [300, 70], pen('faint', 0.9, [4, 2])),
    ...upright(70, 84, 274, null, 264, '', {}),
    words(316, 52, 'wedge rise', { anchor: 'end' }),
    words(316, 170, 'spring', { anchor: 'end', ink: 'faint' }),
    words(160, 194, 'car level and standing on its centre plates', { anchor: 'middle', ink: 'faint' }),
  ],
);
