import { toCanonical } from '../readings/convert';
import { ok, refuse, type Result } from '../readings/result';
import { readWritten } from '../readings/written';

/** No point is longer; a heavy turnout has points of about 39 ft. */
const MOST_MM = 12_192;

const SUCH_AS = 'such as 1 ft, 18 in or 300 mm; 0 for the tip itself.';

/**
 * How far behind the tip of a point, as typed, in mm: 0 for the tip, else a length with its unit
 * (`../readings/written`). Refuses, with what to enter, nothing, a length without a unit (feet and inches are
 * both usual here), one before the tip, and one farther back than any point is long. Never throws.
 */
export function behindEntered(text: string): Result<number> {
  const typed = text.trim();
  if (typed === '') return refuse(`Enter how far behind the tip it was traced, ${SUCH_AS}`);
  if (/^0+(\.0*)?$/.test(typed)) return ok(0);
  const written = readWritten(typed, 'crossLength');
  if (!written.ok) return written;
  const { value } = written;
  if (value.form !== 'plain' && value.form !== 'feetInches')
    return refuse(`“${typed}”: enter a distance, ${SUCH_AS}`);
  if (value.negative)
    return refuse(`“${typed}”: the distance is counted back from the tip; leave the minus sign out.`);
  if (value.form === 'feetInches')
    return within(
      typed,
      toCanonical(value.feet, 'ft', 'crossLength') + toCanonical(value.inches.value, 'in', 'crossLength'),
    );
  if (value.unit === null || value.number.asDecimalComma !== null)
    return refuse(`“${typed}”: enter the unit too, ${SUCH_AS}`);
  return within(typed, toCanonical(value.number.value, value.unit, 'crossLength'));
}

const within = (typed: string, mm: number): Result<number> =>
  mm <= MOST_MM
    ? ok(Number(mm.toPrecision(12)))
    : refuse(`“${typed}” is longer than any point. Check the number and the unit, ${SUCH_AS}`);
