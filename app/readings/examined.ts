import { ok, refuse, type Result } from '~/lib/readings/result';

/** How much of a thing could be looked at, in percent, as a share; a thing not found needs it to mean anything. */
export function parseExamined(entered: string, state: string | null): Result<number | null> {
  const text = entered.trim().replace(/\s*%$/, '');
  if (text === '') {
    return state === 'notFound'
      ? refuse('Enter how much of it could be examined, in percent: 100 if all of it.')
      : ok(null);
  }
  const percent = /^\d{1,3}(\.\d+)?$/.test(text) ? Number(text) : NaN;
  return percent >= 0 && percent <= 100
    ? ok(percent / 100)
    : refuse('Enter a percentage from 0 to 100, such as 80.');
}
