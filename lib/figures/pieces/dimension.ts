import type { Ink, Shape } from '../shapes';
import { textWidth } from '../text-width';
import { arrowHead } from './arrow';
import { arc } from './curve';
import { box, LETTER, line, open, pen, words, type Point } from './draw';

const HEAD = 6;
const GAP = 2;
const PAST = 3;

export type DimensionStyle = {
  readonly ink?: Ink;
  readonly size?: number;
  /** Where the words go when they do not fit between the arrowheads: after the second end, or before the first. */
  readonly outside?: 'after' | 'before';
  /** Words beside the line instead of in it: above or left, below or right. */
  readonly beside?: 'before' | 'after';
  /** Paper behind the words, where they lie on other lines. */
  readonly backed?: boolean;
};

const letters = (
  x: number,
  y: number,
  text: string,
  anchor: 'start' | 'middle' | 'end',
  { size = LETTER, backed, ink = 'ink' }: DimensionStyle,
): Shape[] => {
  if (text === '') return [];
  const width = textWidth(text, size);
  const left = anchor === 'middle' ? x - width / 2 : anchor === 'end' ? x - width : x;
  const behind = backed ? [box(left - 2, y - size * 0.82, width + 4, size * 1.08, { fill: 'paper' })] : [];
  return [...behind, words(x, y, text, { size, anchor, ink })];
};

/**
 * A level dimension line at height `y` between `x1` and `x2`, with extension lines to the points it
 * measures (`from1`, `from2`: their heights) and arrowheads that go outside when there is no room.
 */
export function across(
  x1: number,
  x2: number,
  y: number,
  from1: number | null,
  from2: number | null,
  text: string,
  style: DimensionStyle = {},
): Shape[] {
  const { ink = 'ink', size = LETTER, outside = 'after', beside } = style;
  const [left, right] = x1 < x2 ? [x1, x2] : [x2, x1];
  const [fromLeft, fromRight] = x1 < x2 ? [from1, from2] : [from2, from1];
  const thin = pen(ink, 0.7);
  const shapes: Shape[] = [];
  for (const [x, from] of [
    [left, fromLeft],
    [right, fromRight],
  ] as const) {
    if (from === null) continue;
    const away = Math.sign(y - from) || 1;
    shapes.push(line([x, from + GAP * away], [x, y + PAST * away], thin));
  }
  const width = textWidth(text, size);
  const room = right - left;
  const inside = room >= 2 * HEAD + 4;
  if (inside) {
    shapes.push(line([left, y], [right, y], thin));
    shapes.push(arrowHead([left, y], Math.PI, ink, HEAD), arrowHead([right, y], 0, ink, HEAD));
  } else {
    const tail = 2.2 * HEAD;
    shapes.push(line([left - tail, y], [left, y], thin), line([right, y], [right + tail, y], thin));
    shapes.push(arrowHead([left, y], 0, ink, HEAD), arrowHead([right, y], Math.PI, ink, HEAD));
  }
  const middle = (left + right) / 2;
  if (beside === 'before') shapes.push(...letters(middle, y - 4, text, 'middle', style));
  else if (beside === 'after') shapes.push(...letters(middle, y + size + 1, text, 'middle', style));
  else if (inside && width + 2 * HEAD + 10 <= room)
    shapes.push(...letters(middle, y + size * 0.36, text, 'middle', { ...style, backed: true }));
  else if (outside === 'after')
    shapes.push(...letters(right + (inside ? 4 : 2.2 * HEAD + 3), y + size * 0.36, text, 'start', style));
  else shapes.push(...letters(left - (inside ? 4 : 2.2 * HEAD + 3), y + size * 0.36, text, 'end', style));
  return shapes;
}

/** The same, upright at `x` between heights `y1` and `y2`; words stand level beside it. */
export function upright(
  y1: number,
  y2: number,
  x: number,
  from1: number | null,
  from2: number | null,
  text: string,
  style: DimensionStyle = {},
): Shape[] {
  const { ink = 'ink', size = LETTER, beside = 'after' } = style;
  const [top, bottom] = y1 < y2 ? [y1, y2] : [y2, y1];
  const [fromTop, fromBottom] = y1 < y2 ? [from1, from2] : [from2, from1];
  const thin = pen(ink, 0.7);
  const shapes: Shape[] = [];
  for (const [y, from] of [
    [top, fromTop],
    [bottom, fromBottom],
  ] as const) {
    if (from === null) continue;
    const away = Math.sign(x - from) || 1;
    shapes.push(line([from + GAP * away, y], [x + PAST * away, y], thin));
  }
  if (bottom - top >= 2 * HEAD + 4) {
    shapes.push(line([x, top], [x, bottom], thin));
    shapes.push(arrowHead([x, top], -Math.PI / 2, ink, HEAD), arrowHead([x, bottom], Math.PI / 2, ink, HEAD));
  } else {
    const tail = 2.2 * HEAD;
    shapes.push(line([x, top - tail], [x, top], thin), line([x, bottom], [x, bottom + tail], thin));
    shapes.push(arrowHead([x, top], Math.PI / 2, ink, HEAD), arrowHead([x, bottom], -Math.PI / 2, ink, HEAD));
  }
  const y = (top + bottom) / 2 + size * 0.36;
  shapes.push(
    ...(beside === 'after' ? letters(x + 6, y, text, 'start', style) : letters(x - 6, y, text, 'end', style)),
  );
  return shapes;
}

/** An arc between two directions (rad, clockwise from right) with arrowheads, words at `label`. */
export function angleBetween(
  centre: Point,
  radius: number,
  from: number,
  to: number,
  text: string,
  label: Point,
  style: DimensionStyle & { readonly anchor?: 'start' | 'middle' | 'end' } = {},
): Shape[] {
  const { ink = 'ink', anchor = 'start' } = style;
  const sense = Math.sign(to - from) || 1;
  const end = (angle: number): Point => [
    centre[0] + radius * Math.cos(angle),
    centre[1] + radius * Math.sin(angle),
  ];
  const lean = HEAD / (2 * radius);
  return [
    open(arc(centre, radius, from, to), pen(ink, 0.7)),
    arrowHead(end(from), from - sense * (Math.PI / 2 - lean), ink, HEAD),
    arrowHead(end(to), to + sense * (Math.PI / 2 - lean), ink, HEAD),
    ...letters(label[0], label[1], text, anchor, style),
  ];
}

/** A thin line from words to the thing they name, ending in a dot on it. */
export function leader(
  from: Point,
  to: Point,
  text: string,
  style: DimensionStyle & { readonly anchor?: 'start' | 'middle' | 'end' } = {},
): Shape[] {
  const { ink = 'ink', size = LETTER, anchor = from[0] > to[0] ? 'start' : 'end' } = style;
  const x = anchor === 'start' ? from[0] + 3 : anchor === 'end' ? from[0] - 3 : from[0];
  const y = anchor === 'middle' ? from[1] + (from[1] > to[1] ? size : -4) : from[1] + size * 0.36;
  return [
    line(from, to, pen(ink, 0.7)),
    { type: 'circle', cx: to[0], cy: to[1], r: 1.6, fill: ink },
    ...letters(x, y, text, anchor, style),
  ];
}
