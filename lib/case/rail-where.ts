import { parseMeasure } from '../readings/parse-measure';
import { quantityOf } from '../readings/quantities';

const STATION_WORD = /^sta(?:tion)?\.?\s*/i;
const POD = /^(?:at )?(?:the )?pod$/i;
const SIDE = /\s*(?:from|before|after|past)\b.*$/i;
/** A number alone, which is a distance in feet to one reader and in metres to another; nothing is nothing in both. */
const WITHOUT_UNIT = /^[-+−]?(?=.*[1-9])[\d.,/ ]+$/;

/** What the words about a rail’s place say: a station of the sheet, or a distance from the POD. */
export type RailWhere =
  | { readonly kind: 'station'; readonly name: string }
  /** `sided`: words say on which side of the POD; `m` is negative before it. */
  | { readonly kind: 'distance'; readonly m: number; readonly sided: boolean };

/**
 * Reads a rail’s “Where”: the name of a station of the sheet (`names`), with or without the word, the
 * POD itself, or a distance with its unit. Null where the words give none.
 */
export function readRailWhere(where: string, names: ReadonlySet<string>): RailWhere | null {
  const text = where.trim();
  const name = text.replace(STATION_WORD, '');
  if (names.has(name)) return { kind: 'station', name };
  if (POD.test(text)) return { kind: 'distance', m: 0, sided: true };
  const number = text.replace(SIDE, '');
  const quantity = quantityOf('stationPosition');
  if (quantity.kind !== 'measure' || WITHOUT_UNIT.test(number)) return null;
  const parsed = parseMeasure(number, quantity, 'us');
  if (!parsed.ok) return null;
  const sided = SIDE.test(text) && !/\bfrom\b/i.test(text);
  return {
    kind: 'distance',
    m: /\bbefore\b/i.test(text) ? -Math.abs(parsed.value.value) : parsed.value.value,
    sided,
  };
}

/** The same place counted the other way: "-46.5 ft" for "46.5 ft"; stations, and words such as "before", stay. */
export function turnedWhere(where: string, names: ReadonlySet<string>): string {
  const read = readRailWhere(where, names);
  if (read?.kind !== 'distance' || read.sided || read.m === 0) return where;
  const text = where.trim();
  return /^[-−]/.test(text) ? text.replace(/^[-−]\s*/, '') : `-${text.replace(/^\+\s*/, '')}`;
}
