/**
 * A drawing as plain shapes, in its own coordinates (x right, y down, one unit = one CSS px
 * = 0.75 pt). `svg.ts` and `pdf.ts` render the same shapes; neither knows what is drawn.
 */
export const INKS = [
  'ink', // main lines and words
  'faint', // grid, secondary words
  'paper', // background
  'rail',
  'wheel',
  'limit',
  'mark',
  'seriesA',
  'seriesB',
  'seriesC',
  'shade', // light fill
  'warn',
] as const;
export type Ink = (typeof INKS)[number];

export type Stroke = { readonly ink: Ink; readonly width: number; readonly dash?: readonly number[] };
type Style = { readonly stroke?: Stroke; readonly fill?: Ink; readonly fillOpacity?: number };

export type Shape =
  | ({
      readonly type: 'line';
      readonly x1: number;
      readonly y1: number;
      readonly x2: number;
      readonly y2: number;
    } & Style)
  /** Points as x0, y0, x1, y1, …; NaN breaks the line, so that a gap stays a gap. */
  | ({ readonly type: 'polyline'; readonly points: readonly number[]; readonly closed?: boolean } & Style)
  | ({
      readonly type: 'rect';
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
      readonly radius?: number;
    } & Style)
  | ({ readonly type: 'circle'; readonly cx: number; readonly cy: number; readonly r: number } & Style)
  | {
      readonly type: 'text';
      readonly x: number;
      readonly y: number;
      readonly text: string;
      readonly size: number;
      readonly anchor?: 'start' | 'middle' | 'end';
      readonly weight?: 'normal' | 'bold';
      readonly ink?: Ink;
      /** Degrees clockwise about (x, y). */
      readonly rotate?: number;
    }
  | { readonly type: 'group'; readonly label?: string; readonly shapes: readonly Shape[] };

export type Figure = {
  readonly width: number;
  readonly height: number;
  /** For readers who cannot see it: what is drawn and what it shows. */
  readonly title: string;
  readonly description: string;
  readonly shapes: readonly Shape[];
};
