import { type Outline } from '../outline/outline';

/**
 * Parts of a new section by what happens to them in service: the top and the gauge side wear; the field
 * side, and everything below the lower corners of the head, do not.
 */
export type Zone = 'below' | 'gaugeSide' | 'top' | 'fieldSide';

/** A new section prepared for laying traces over it. */
export type SectionLine = {
  readonly outline: Outline;
  readonly headingRad: Float64Array;
  readonly zones: readonly Zone[];
  /** Lower corners of the head, as indices into the outline. */
  readonly gaugeCorner: number;
  readonly fieldCorner: number;
  /** Index of the point of the outline nearest to a place; null when that is further away than `REACH_MM`. */
  readonly nearest: (xMm: number, yMm: number) => number | null;
};

/** Points further than this from the section are not laid on it. */
export const REACH_MM = 30;

/** A head whose side has come back in by this much has passed its lower corner. */
const PAST_CORNER_MM = 3;

/** The side of the head is steeper than this; above it is the top with its corners. */
const STEEP_RAD = (80 * Math.PI) / 180;

const CELL_MM = 1;
/** Further from the section than this, the point nearest to the middle of a square will do for all of it. */
const FAR_MM = 6;
/** More columns than any section with its reach has, so that a square has one number. */
const COLUMNS = 4096;

/**
 * Prepares a section: `reference` in the frame of `../outline/outline`, new, walked from the gauge side
 * over the top, dense (a few points per mm) and even in its curves.
 */
export function sectionLine(reference: Outline): SectionLine {
  const { xMm, yMm } = reference;
  const n = xMm.length;
  const headingRad = new Float64Array(n);
  for (let i = 0; i < n; i += 1) {
    const a = Math.max(0, i - 1);
    const b = Math.min(n - 1, i + 1);
    headingRad[i] = Math.atan2(yMm[b]! - yMm[a]!, xMm[b]! - xMm[a]!);
  }
  const top = yMm.indexOf(Math.max(...yMm));
  const gaugeCorner = lowerCorner(xMm, top, -1);
  const fieldCorner = lowerCorner(xMm, top, 1);
  let fieldFrom = fieldCorner;
  while (fieldFrom > top && headingRad[fieldFrom - 1]! < -STEEP_RAD) fieldFrom -= 1;
  const zones = Array.from({ length: n }, (_, i): Zone => {
    if (i < gaugeCorner || i > fieldCorner) return 'below';
    if (i >= fieldFrom) return 'fieldSide';
    return i < top && headingRad[i]! > Math.PI / 4 ? 'gaugeSide' : 'top';
  });
  return { outline: reference, headingRad, zones, gaugeCorner, fieldCorner, nearest: nearestOn(reference) };
}

/** From the top to a side (`step` −1 gauge, 1 field): the outermost point before the line comes back in. */
function lowerCorner(xMm: Float64Array, top: number, step: 1 | -1): number {
  let corner = top;
  for (let i = top; i >= 0 && i < xMm.length; i += step) {
    if (step * xMm[i]! > step * xMm[corner]!) corner = i;
    if (step * (xMm[corner]! - xMm[i]!) > PAST_CORNER_MM) break;
  }
  return corner;
}

/**
 * Looks the nearest point up: the points near each square of a grid are gathered once, when the square is
 * first asked for.
 */
function nearestOn({ xMm, yMm }: Outline): SectionLine['nearest'] {
  const n = xMm.length;
  const squares = new Map<number, readonly number[]>();
  const candidates = (column: number, row: number): readonly number[] => {
    const key = row * COLUMNS + column;
    const known = squares.get(key);
    if (known !== undefined) return known;
    const x = (column + 0.5) * CELL_MM;
    const y = (row + 0.5) * CELL_MM;
    let least = Infinity;
    let nearest = 0;
    for (let i = 0; i < n; i += 1) {
      const square = (xMm[i]! - x) ** 2 + (yMm[i]! - y) ** 2;
      if (square < least) [least, nearest] = [square, i];
    }
    const closest = Math.sqrt(least);
    const found: number[] = [];
    if (closest > FAR_MM && closest <= REACH_MM) found.push(nearest);
    if (closest <= FAR_MM) {
      // Any point of the square has its nearest within the square's diagonal more than the centre has.
      const within = (closest + CELL_MM * Math.SQRT2) ** 2;
      for (let i = 0; i < n; i += 1) {
        if ((xMm[i]! - x) ** 2 + (yMm[i]! - y) ** 2 <= within) found.push(i);
      }
    }
    squares.set(key, found);
    return found;
  };
  return (x, y) => {
    let best: number | null = null;
    let least = REACH_MM * REACH_MM;
    for (const i of candidates(Math.floor(x / CELL_MM), Math.floor(y / CELL_MM))) {
      const dx = xMm[i]! - x;
      const dy = yMm[i]! - y;
      const square = dx * dx + dy * dy;
      if (square < least) {
        least = square;
        best = i;
      }
    }
    return best;
  };
}

const prepared = new WeakMap<Outline, SectionLine>();
const rough = new WeakMap<Outline, SectionLine>();

/** `sectionLine` of an outline, prepared once per outline. */
export const sectionLineOf = (reference: Outline): SectionLine => remembered(prepared, reference, reference);

/** The same from every fourth point: for first looks from far away. */
export const roughSectionOf = (reference: Outline): SectionLine =>
  remembered(rough, reference, everyNth(reference, 4));

function remembered(known: WeakMap<Outline, SectionLine>, reference: Outline, outline: Outline): SectionLine {
  const found = known.get(reference);
  if (found !== undefined) return found;
  const line = sectionLine(outline);
  known.set(reference, line);
  return line;
}

export const everyNth = ({ xMm, yMm }: Outline, nth: number): Outline => ({
  xMm: xMm.filter((_, i) => i % nth === 0),
  yMm: yMm.filter((_, i) => i % nth === 0),
});
