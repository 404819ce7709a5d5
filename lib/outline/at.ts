import { type Outline } from './outline';

/**
 * Height of the line at a place across it, mm, by straight lines between the points; the uppermost where
 * the line passes `xMm` more than once. Null where it does not reach.
 */
export function heightAt(outline: Outline, xMm: number): number | null {
  const { xMm: xs, yMm: ys } = outline;
  let highest: number | null = null;
  for (let i = 1; i < xs.length; i += 1) {
    const [x0, x1] = [xs[i - 1]!, xs[i]!];
    if ((x0 < xMm && x1 < xMm) || (x0 > xMm && x1 > xMm)) continue;
    const y = x0 === x1 ? Math.max(ys[i - 1]!, ys[i]!) : between(x0, ys[i - 1]!, x1, ys[i]!, xMm);
    if (highest === null || y > highest) highest = y;
  }
  return highest;
}

/** Places across the line where it passes the height `yMm`, in the order of the line, mm. */
export function placesAtHeight({ xMm, yMm: ys }: Outline, yMm: number): number[] {
  const places: number[] = [];
  for (let i = 1; i < ys.length; i += 1) {
    const [y0, y1] = [ys[i - 1]!, ys[i]!];
    if (y0 < yMm !== y1 < yMm) places.push(between(y0, xMm[i - 1]!, y1, xMm[i]!, yMm));
  }
  return places;
}

const between = (a0: number, b0: number, a1: number, b1: number, a: number): number =>
  b0 + ((b1 - b0) * (a - a0)) / (a1 - a0);
