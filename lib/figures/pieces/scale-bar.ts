import type { UnitSystem } from '../../readings/unit';
import type { Shape } from '../shapes';
import { box, LETTER, line, pen, words } from './draw';

/** A bar as a drawing carries it, in the units of the case; true at whatever size the figure is shown. */
const BARS = {
  metric: [
    { mm: 50, parts: 5, label: '50 mm' },
    { mm: 20, parts: 4, label: '20 mm' },
    { mm: 10, parts: 2, label: '10 mm' },
  ],
  us: [
    { mm: 50.8, parts: 4, label: '2 in' },
    { mm: 25.4, parts: 4, label: '1 in' },
    { mm: 12.7, parts: 4, label: '1/2 in' },
  ],
} as const;

export type ScaleBar = { readonly shapes: readonly Shape[]; readonly width: number };

/** Scale bar with its left end at `x`, standing on `y`, no wider than `most` where one is that short. */
export function scaleBar(x: number, y: number, pxPerMm: number, system: UnitSystem, most = 160): ScaleBar {
  const bars = BARS[system];
  const bar = bars.find(({ mm }) => mm * pxPerMm <= most) ?? bars[bars.length - 1]!;
  const part = (bar.mm * pxPerMm) / bar.parts;
  const length = part * bar.parts;
  return {
    width: length + 6 + 40,
    shapes: [
      ...Array.from({ length: bar.parts }, (_, i) =>
        box(x + i * part, y - 5, part, 5, { fill: i % 2 === 0 ? 'ink' : 'paper', stroke: pen('ink', 0.7) }),
      ),
      line([x, y - 8], [x, y], pen('ink', 0.7)),
      line([x + length, y - 8], [x + length, y], pen('ink', 0.7)),
      words(x + length + 6, y, bar.label, { size: LETTER }),
    ],
  };
}
