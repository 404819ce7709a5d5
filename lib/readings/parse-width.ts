import { widthToCanonical } from './convert';
import { ok, refuse, type Result } from './result';
import { DIMENSIONS, type Dimension, type Unit } from './unit';
import { readWritten } from './written';

const unitless = (dimension: Dimension): Unit | null =>
  (DIMENSIONS[dimension].units as readonly Unit[]).includes('1') ? '1' : null;

/**
 * A division or an uncertainty as marked on an instrument or its certificate ("1/16 in", "0.1 mm",
 * "±0.5 °C"), as a width in the canonical unit of the dimension. It needs its unit, except a
 * fraction, which is of an inch. Refuses zero, negative widths and a width in a radius.
 */
export function parseWidth(text: string, dimension: Dimension): Result<number> {
  const written = readWritten(text.replace(/^\s*±/, ''), dimension);
  if (!written.ok) return written;
  if (written.value.form !== 'plain' || written.value.negative || written.value.number.value === 0) {
    return refuse(`“${text.trim()}”: enter one width above zero with its unit, such as 1/16 in or 0.1 mm.`);
  }
  const { number, unit } = written.value;
  const length = dimension === 'crossLength' || dimension === 'alongTrack';
  const assumed: Unit | null = length && number.kind === 'fraction' ? 'in' : unitless(dimension);
  const used = unit ?? assumed;
  if (used === null || number.asDecimalComma !== null) {
    return refuse(`“${text.trim()}”: enter the unit too, such as 1/16 in or 0.1 mm.`);
  }
  if (used === 'm radius' || used === 'ft radius') {
    return refuse(`“${text.trim()}”: enter the width in degrees of curve.`);
  }
  return ok(widthToCanonical(number.value, 0, used, dimension));
}
