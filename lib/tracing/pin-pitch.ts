import { parseWidth } from '../readings/parse-width';
import { refuse, type Result } from '../readings/result';

/**
 * Distance between the middles of two neighbouring pins as typed ("1/16", "1.5", "0.05 in"), mm. A
 * number without a unit is in the unit of the offsets. Refuses what is no width above zero.
 */
export function pinPitch(text: string, unit: 'mm' | 'in'): Result<number> {
  const typed = text.trim();
  const parsed = parseWidth(/[a-z"″']/i.test(typed) ? typed : `${typed} ${unit}`, 'crossLength');
  return parsed.ok
    ? parsed
    : refuse('Enter the distance from one pin to the next, such as 1/16 in or 1.5 mm.');
}
