import { expect } from 'vitest';
import { drawable } from '~/lib/figures/runs';
import type { Figure, Shape } from '~/lib/figures/shapes';
import { textWidth } from '~/lib/figures/text-width';

export type Placed = Extract<Shape, { type: 'text' }>;

const flat = (shapes: readonly Shape[]): readonly Shape[] =>
  shapes.flatMap((shape) => (shape.type === 'group' ? flat(shape.shapes) : [shape]));

export const shapesOf = (figure: Figure): readonly Exclude<Shape, { type: 'group' }>[] =>
  flat(figure.shapes) as readonly Exclude<Shape, { type: 'group' }>[];

export const textsOf = (figure: Figure): readonly Placed[] =>
  shapesOf(figure).filter((shape): shape is Placed => shape.type === 'text');

export const wordsOf = (figure: Figure): string =>
  textsOf(figure)
    .map((each) => each.text)
    .join('\n');

/** Corners of the letters' box: left, right along the line, with rise and drop. */
export function boxOf(text: Placed): { left: number; right: number; top: number; bottom: number } {
  const width = textWidth(text.text, text.size, text.weight);
  const shift = text.anchor === 'middle' ? width / 2 : text.anchor === 'end' ? width : 0;
  const turn = ((text.rotate ?? 0) * Math.PI) / 180;
  const corners = [
    [-shift, -0.76 * text.size],
    [width - shift, -0.76 * text.size],
    [-shift, 0.22 * text.size],
    [width - shift, 0.22 * text.size],
  ].map(([x, y]) => [
    text.x + x! * Math.cos(turn) - y! * Math.sin(turn),
    text.y + x! * Math.sin(turn) + y! * Math.cos(turn),
  ]);
  const xs = corners.map((each) => each[0]!);
  const ys = corners.map((each) => each[1]!);
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

/** Fails when a word leaves the figure, or is drawn smaller than `least`. */
export function expectWordsInside(figure: Figure, least = 9): void {
  const wrong = textsOf(figure).filter((text) => {
    const { left, right, top, bottom } = boxOf(text);
    return left < 0 || top < 0 || right > figure.width || bottom > figure.height || text.size < least;
  });
  expect(wrong.map((text) => `${text.text} at ${text.x.toFixed(0)}, ${text.y.toFixed(0)}`)).toEqual([]);
}

/** Pairs of words that lie on each other by more than a hair. */
export function overlappingWords(figure: Figure): readonly string[] {
  const boxes = textsOf(figure).map((text) => ({ text: text.text, ...boxOf(text) }));
  return boxes.flatMap((a, i) =>
    boxes
      .slice(i + 1)
      .filter(
        (b) =>
          Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 &&
          Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1.5,
      )
      .map((b) => `${a.text} / ${b.text}`),
  );
}

/** Fails when anything drawn (lines, boxes, circles) leaves the figure by more than a stroke. */
export function expectShapesInside(figure: Figure, slack = 2): void {
  const outside = shapesOf(figure).filter((shape) => {
    const points =
      shape.type === 'line'
        ? [shape.x1, shape.y1, shape.x2, shape.y2]
        : shape.type === 'polyline'
          ? shape.points
          : shape.type === 'rect'
            ? [shape.x, shape.y, shape.x + shape.width, shape.y + shape.height]
            : shape.type === 'circle'
              ? [shape.cx - shape.r, shape.cy - shape.r, shape.cx + shape.r, shape.cy + shape.r]
              : [];
    return points.some(
      (value, i) =>
        drawable(value) && (value < -slack || value > (i % 2 === 0 ? figure.width : figure.height) + slack),
    );
  });
  expect(outside).toEqual([]);
}
