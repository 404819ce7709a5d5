/**
 * The unbroken stretches of a polyline given as x0, y0, x1, y1, …: a NaN (or infinite) coordinate
 * ends one. A point alone between two gaps is no line and is left to the figure's markers.
 */
export function runs(points: readonly number[]): readonly (readonly number[])[] {
  const found: number[][] = [];
  let run: number[] = [];
  for (let i = 0; i + 1 < points.length; i += 2) {
    const x = points[i]!;
    const y = points[i + 1]!;
    if (Number.isFinite(x) && Number.isFinite(y)) run.push(x, y);
    else {
      if (run.length >= 4) found.push(run);
      run = [];
    }
  }
  if (run.length >= 4) found.push(run);
  return found;
}

/** Whether every coordinate can be drawn; a shape with one that cannot is left out. */
export const drawable = (...coordinates: readonly number[]): boolean => coordinates.every(Number.isFinite);
