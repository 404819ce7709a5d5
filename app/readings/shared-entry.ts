import { z } from 'zod';
import { isLocalTime } from '~/app/times';
import { DISTURBANCES, SAMPLINGS, type CaseRecord } from '~/lib/case/record';
import type { NewReading } from '~/db/readings';
import { standing } from '~/lib/case/current';

export type SharedEntry = Pick<
  NewReading,
  'instrumentId' | 'personId' | 'takenAt' | 'disturbance' | 'sampling' | 'note'
>;

type Read = { readonly entry: SharedEntry; readonly errors: Readonly<Record<string, string>> };

/** The clock at the site, ISO 8601 without zone; this machine's own when the case names no zone it knows. */
export function nowAt(timeZone: unknown, now = new Date()): string {
  const format = (zone: string | undefined) =>
    new Intl.DateTimeFormat('sv-SE', { timeZone: zone, dateStyle: 'short', timeStyle: 'short' })
      .format(now)
      .replace(' ', 'T');
  try {
    return format(typeof timeZone === 'string' && timeZone !== '' ? timeZone : undefined);
  } catch {
    return format(undefined);
  }
}

const text = (form: FormData, name: string): string => {
  const value = form.get(name);
  return typeof value === 'string' ? value.trim() : '';
};

/** Who, when, with what and in which state: the part of a form that all its readings share. */
export function readSharedEntry(form: FormData, record: CaseRecord): Read {
  const errors: Record<string, string> = {};
  const known = (kind: 'person' | 'instrument', id: string): string | null =>
    standing(record, kind).some((entity) => entity.id === id) ? id : null;

  const takenAt = text(form, 'takenAt');
  const isDate = isLocalTime(takenAt);
  if (takenAt !== '' && !isDate) {
    errors.takenAt = 'Enter date and time such as 2026-03-14T09:30, or leave it empty.';
  }
  const justNow = text(form, 'justNow') !== '' && takenAt === '';
  return {
    entry: {
      instrumentId: known('instrument', text(form, 'instrument')),
      personId: known('person', text(form, 'person')),
      takenAt: justNow ? nowAt(record.fields.timeZone) : isDate ? takenAt : null,
      disturbance: z.enum(DISTURBANCES).catch('notSaid').parse(text(form, 'disturbance')),
      sampling: z.enum(SAMPLINGS).catch('notSaid').parse(text(form, 'sampling')),
      note: text(form, 'note').slice(0, 1000),
    },
    errors,
  };
}
