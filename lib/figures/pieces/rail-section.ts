import { railSection, type RailSection } from '../../rail/sections';
import type { Shape } from '../shapes';
import { bezier, place, type Placing } from './curve';
import { area, pen, type Point } from './draw';

/** The section of the sketches. */
export const SKETCH_RAIL = railSection('136RE')!;

/** Shares of the height and angles of a usual section; the table has overall sizes only. A sketch, not a reference shape. */
const HEAD_SIDE = 0.2;
const UNDER_HEAD = 0.27;
const WEB_FROM = 0.36;
const WEB_TO = 0.78;
const BASE_EDGE = 0.07;
const CORNER_MM = 13;

/**
 * Outline of a rail in mm, closed, from its overall sizes: x from the middle, y down from the top
 * of the head. `worn` takes metal off the side towards negative x, the gauge side of a right rail.
 */
export function railOutline(section: RailSection, worn?: { topMm: number; faceMm: number }): Point[] {
  const { heightMm: h, baseWidthMm: base, headWidthMm: head, webMm: web } = section;
  const half = (side: 1 | -1, top: number, face: number): Point[] => {
    const edge = head / 2;
    const shoulder = edge - face * 1.5;
    return [
      [0, top],
      ...bezier(
        [side * (shoulder - CORNER_MM - 6), top + 0.7],
        [side * (shoulder - 4), top + 1.5],
        [side * shoulder, top + 6],
        [side * (face > 0 ? shoulder + 1.5 : shoulder), top + (face > 0 ? 10 : CORNER_MM + 3)],
        8,
      ),
      // A worn face runs straight from the corner that is left to the foot of the head.
      [side * (edge - face * 0.25), h * HEAD_SIDE],
      ...bezier(
        [side * (edge - 2), h * HEAD_SIDE + 4],
        [side * (web / 2 + 16), h * UNDER_HEAD],
        [side * (web / 2 + 1), h * UNDER_HEAD],
        [side * (web / 2), h * WEB_FROM],
        8,
      ),
      ...bezier(
        [side * (web / 2), h * WEB_TO],
        [side * (web / 2 + 2), h * 0.86],
        [side * (web / 2 + 14), h * 0.87],
        [side * (base / 2 - 2), h * (1 - BASE_EDGE) - 2],
        8,
      ),
      [side * (base / 2), h * (1 - BASE_EDGE) + 1],
      [side * (base / 2 - 1), h],
    ];
  };
  const left = half(-1, worn?.topMm ?? 0, worn?.faceMm ?? 0);
  const right = half(1, worn?.topMm ?? 0, 0);
  return [...right, ...left.reverse()];
}

/** The head alone, cut off below its fillets, for drawings of the head. */
export const headOutline = (section: RailSection, worn?: { topMm: number; faceMm: number }): Point[] =>
  railOutline(section, worn).filter(([, y]) => y <= section.heightMm * WEB_FROM);

/** The rail as a filled shape. `at` is the middle of the top of its head, or of its base. */
export function railShape(
  placing: Placing,
  {
    section = SKETCH_RAIL,
    origin = 'head',
    worn,
  }: { section?: RailSection; origin?: 'head' | 'base'; worn?: { topMm: number; faceMm: number } } = {},
): Shape {
  const shift = origin === 'base' ? section.heightMm : 0;
  const outline = railOutline(section, worn).map(([x, y]): Point => [x, y - shift]);
  return area(place(outline, placing), 'shade', pen('rail', 1.3));
}
