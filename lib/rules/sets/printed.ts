import { toCanonical } from '../../readings/convert';
import { printedLengthMm } from '../printed';
import type { RuleLimit } from '../rule-set';

/** A limit's numbers, written once: as the rule prints them, with the mm worked out from that text. */
type Amounts = Pick<RuleLimit, 'perClass' | 'asPrinted'>;

const amounts = <T extends string | number>(
  printed: Readonly<Record<string, T | null>>,
  toNumber: (text: T) => number,
): Amounts => {
  const entries = Object.entries(printed);
  return {
    perClass: Object.fromEntries(entries.map(([id, text]) => [id, text === null ? null : toNumber(text)])),
    asPrinted: Object.fromEntries(
      entries.flatMap(([id, text]) => (text === null ? [] : [[id, String(text)]])),
    ),
  };
};

export const printedMm = (text: string): number => {
  const length = printedLengthMm(text);
  // Rule sets are part of the program: text that cannot be read is a slip in the data file.
  if (!length.ok) throw new Error(length.message);
  return length.value;
};

/** Lengths by class id, as printed; null where the class has no such limit. */
export const lengths = (printed: Readonly<Record<string, string | null>>): Amounts =>
  amounts(printed, printedMm);

/** Counts by class id; null where the class has no such limit. */
export const counts = (printed: Readonly<Record<string, number | null>>): Amounts =>
  amounts(printed, (n) => n);

export const feet = (value: number): number => toCanonical(value, 'ft', 'alongTrack');
export const mph = (value: number): number => toCanonical(value, 'mph', 'speed');
export const kmh = (value: number): number => toCanonical(value, 'km/h', 'speed');
