const YEARS = [1800, 2200] as const;

function isDay(year: number, month: number, day: number): boolean {
  if (year < YEARS[0] || year > YEARS[1]) return false;
  const date = new Date(Date.UTC(year, month - 1, day));
  return date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
}

/** A calendar day `YYYY-MM-DD` (ISO 8601), or null when it is none, such as 2031-02-30. */
export function parseDate(text: string): string | null {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  return match !== null && isDay(Number(match[1]), Number(match[2]), Number(match[3])) ? text : null;
}

/**
 * Local date and time `YYYY-MM-DDTHH:mm` (ISO 8601 without zone), or null when it is none. A space
 * may stand for the T; seconds are kept unless they are 00.
 */
export function parseDateTime(text: string): string | null {
  const match = /^(\d{4}-\d{2}-\d{2})[T ](\d{2}):(\d{2})(?::(\d{2}))?$/.exec(text);
  if (match === null) return null;
  const [, date = '', hours = '', minutes = '', seconds = '00'] = match;
  if (parseDate(date) === null || Number(hours) > 23 || Number(minutes) > 59 || Number(seconds) > 59)
    return null;
  return `${date}T${hours}:${minutes}${seconds === '00' ? '' : `:${seconds}`}`;
}
