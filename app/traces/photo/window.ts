import type { PixelPoint } from '~/lib/tracing/line';

/** The part of a picture that is looked at, in its pixels. */
export type Window = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
};

export type Size = { readonly width: number; readonly height: number };

/** Closest look: this many pixels of the picture across. */
const NEAREST_PX = 60;

/** The whole picture. */
export const whole = ({ width, height }: Size): Window => ({ x: 0, y: 0, width, height });

/** The same window moved so that it stays over the picture. */
function over({ width, height }: Size, window: Window): Window {
  const clamp = (from: number, length: number, size: number): number =>
    Math.max(Math.min(0, size - length), Math.min(Math.max(0, size - length), from));
  return {
    ...window,
    x: clamp(window.x, window.width, width),
    y: clamp(window.y, window.height, height),
  };
}

/** Nearer (factor above 1) or farther, with `about` staying where it is on the screen. */
export function zoomed(size: Size, window: Window, factor: number, about: PixelPoint): Window {
  const width = Math.min(size.width, Math.max(NEAREST_PX, window.width / factor));
  const by = width / window.width;
  return over(size, {
    x: about[0] - (about[0] - window.x) * by,
    y: about[1] - (about[1] - window.y) * by,
    width,
    height: window.height * by,
  });
}

/** Moved by so many pixels of the picture. */
export const shifted = (size: Size, window: Window, dx: number, dy: number): Window =>
  over(size, { ...window, x: window.x + dx, y: window.y + dy });

/** Moved just so far that the point is inside, with a tenth of room round it. */
export function showing(size: Size, window: Window, [x, y]: PixelPoint): Window {
  const reach = (from: number, length: number, at: number): number => {
    const room = length / 10;
    if (at < from + room) return at - room - from;
    return at > from + length - room ? at - (from + length - room) : 0;
  };
  return shifted(size, window, reach(window.x, window.width, x), reach(window.y, window.height, y));
}

/** The middle of what is looked at. */
export const middle = ({ x, y, width, height }: Window): PixelPoint => [x + width / 2, y + height / 2];

/** The point, or the nearest one on the picture. */
export const inside = ({ width, height }: Size, [x, y]: PixelPoint): PixelPoint => [
  Math.min(width - 1, Math.max(0, x)),
  Math.min(height - 1, Math.max(0, y)),
];
