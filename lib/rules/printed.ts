import { toCanonical } from '../readings/convert';
import { ok, refuse, type Result } from '../readings/result';
import { readWritten } from '../readings/written';

/**
 * A length as a rule prints it (`4'9 3/4"`, `1 1/4 in`, `21 mm`) in mm. The unit must be written.
 * Errors: a message saying what to enter instead.
 */
export const printedLengthMm = (text: string): Result<number> => {
  const written = readWritten(text, 'crossLength');
  if (!written.ok) return written;
  const { value } = written;
  if ('negative' in value && value.negative) {
    return refuse(`“${text}”: a limit is not negative. Enter the size alone.`);
  }
  if (value.form === 'feetInches') {
    return ok(toCanonical(value.feet * 12 + value.inches.value, 'in', 'crossLength'));
  }
  if (value.form === 'plain' && value.unit !== null) {
    return ok(toCanonical(value.number.value, value.unit, 'crossLength'));
  }
  return refuse(`“${text}”: write the unit with the limit, such as 1 1/2" or 38 mm.`);
};
