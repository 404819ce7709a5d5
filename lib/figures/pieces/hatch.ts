import type { Shape, Stroke } from '../shapes';
import { line, type Point } from './draw';

/**
 * Parallel lines `spacing` apart that fill a closed polygon, at `angleRad` clockwise from level
 * (even-odd rule). They belong to one grid over the whole drawing, so that neighbouring areas match.
 */
export function hatched(
  polygon: readonly Point[],
  angleRad: number,
  spacing: number,
  stroke: Stroke,
): readonly Shape[] {
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)];
  const turned = polygon.map(([x, y]): Point => [x * cos + y * sin, y * cos - x * sin]);
  const heights = turned.map(([, v]) => v);
  const shapes: Shape[] = [];
  const last = Math.floor(Math.max(...heights) / spacing);
  for (let row = Math.ceil(Math.min(...heights) / spacing); row <= last; row += 1) {
    const v = row * spacing;
    const crossings: number[] = [];
    for (let i = 0; i < turned.length; i += 1) {
      const [u0, v0] = turned[i]!;
      const [u1, v1] = turned[(i + 1) % turned.length]!;
      if (v0 <= v !== v1 <= v) crossings.push(u0 + ((v - v0) / (v1 - v0)) * (u1 - u0));
    }
    crossings.sort((a, b) => a - b);
    for (let i = 0; i + 1 < crossings.length; i += 2) {
      const back = (u: number): Point => [u * cos - v * sin, u * sin + v * cos];
      shapes.push(line(back(crossings[i]!), back(crossings[i + 1]!), stroke));
    }
  }
  return shapes;
}
