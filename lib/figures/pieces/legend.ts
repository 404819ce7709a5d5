import type { Shape } from '../shapes';
import { textWidth, wrapText } from '../text-width';
import { LETTER, words } from './draw';

/** What a line or a shading of the drawing stands for; `sample` draws 24 units of it on the line of words. */
export type LegendItem = {
  readonly text: string;
  readonly sample: (x: number, y: number) => readonly Shape[];
};

const SAMPLE = 30;
const BETWEEN = 20;
const LINE = LETTER * 1.3;

/** Items in rows from `left` to `right`, the first row below `top`; where they end. */
export function legend(
  items: readonly LegendItem[],
  left: number,
  right: number,
  top: number,
): { readonly shapes: readonly Shape[]; readonly bottom: number } {
  const shapes: Shape[] = [];
  let [x, y] = [left, top + LETTER];
  for (const { text, sample } of items) {
    const rows = wrapText(text, right - left - SAMPLE, LETTER);
    const wide = SAMPLE + Math.max(...rows.map((row) => textWidth(row, LETTER)));
    if (x > left && x + wide > right) [x, y] = [left, y + LINE + 3];
    shapes.push(...sample(x, y), ...rows.map((row, i) => words(x + SAMPLE, y + i * LINE, row)));
    if (rows.length > 1) [x, y] = [left, y + rows.length * LINE + 3];
    else x += wide + BETWEEN;
  }
  return { shapes, bottom: x > left ? y + 6 : y - LINE + 6 };
}
