import type { Ink, Shape, Stroke } from '../shapes';

export type Point = readonly [number, number];

export const pen = (ink: Ink, width = 1, dash?: readonly number[]): Stroke =>
  dash === undefined ? { ink, width } : { ink, width, dash };

export const line = (from: Point, to: Point, stroke: Stroke): Shape => ({
  type: 'line',
  x1: from[0],
  y1: from[1],
  x2: to[0],
  y2: to[1],
  stroke,
});

export const open = (points: readonly Point[], stroke: Stroke): Shape => ({
  type: 'polyline',
  points: points.flat(),
  stroke,
});

export const area = (
  points: readonly Point[],
  fill: Ink | undefined,
  stroke?: Stroke,
  fillOpacity?: number,
): Shape => ({
  type: 'polyline',
  points: points.flat(),
  closed: true,
  ...(fill === undefined ? {} : { fill }),
  ...(stroke === undefined ? {} : { stroke }),
  ...(fillOpacity === undefined ? {} : { fillOpacity }),
});

export const box = (
  x: number,
  y: number,
  width: number,
  height: number,
  style: {
    readonly fill?: Ink;
    readonly stroke?: Stroke;
    readonly fillOpacity?: number;
    readonly radius?: number;
  },
): Shape => ({ type: 'rect', x, y, width, height, ...style });

export type WordStyle = {
  readonly size?: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly bold?: boolean;
  readonly ink?: Ink;
  readonly rotate?: number;
};

/** Smallest letters of any drawing: still legible when a figure fills the width of a phone. */
export const LETTER = 11;

export const words = (
  x: number,
  y: number,
  text: string,
  { size = LETTER, anchor, bold, ink, rotate }: WordStyle = {},
): Shape => ({
  type: 'text',
  x,
  y,
  text,
  size,
  ...(anchor === undefined ? {} : { anchor }),
  ...(bold ? { weight: 'bold' as const } : {}),
  ...(ink === undefined ? {} : { ink }),
  ...(rotate === undefined ? {} : { rotate }),
});

/** Lines of words below each other, the first on `y`. */
export const lines = (x: number, y: number, texts: readonly string[], style: WordStyle = {}): Shape[] =>
  texts.map((text, i) => words(x, y + i * (style.size ?? LETTER) * 1.25, text, style));
