import type { LoadedCase } from '~/app/case.server';
import { readSharedEntry, type SharedEntry } from '~/app/readings/shared-entry';
import { standing } from '~/lib/case/current';
import type { About } from './about';

const SIGNED_NUMBER = /^[+\-−]?\d{1,6}(\.\d+)?$/;

/** Seconds to add to the recorder's clock; NaN when the text is none. */
export const offsetOf = ({ clockOffsetS }: About): number =>
  clockOffsetS === '' ? 0 : SIGNED_NUMBER.test(clockOffsetS) ? Number(clockOffsetS.replace('−', '-')) : NaN;

/** Box → what to enter instead. */
export function aboutErrors(about: About, { record }: LoadedCase): Readonly<Record<string, string>> {
  const errors: Record<string, string> = { ...sharedOf(about, record).errors };
  if (Number.isNaN(offsetOf(about))) errors.clockOffsetS = 'Enter seconds, such as 0, 12.5 or -4.';
  return errors;
}

function sharedOf(about: About, record: LoadedCase['record']) {
  const form = new FormData();
  for (const [name, value] of Object.entries(about)) form.set(name, value);
  return readSharedEntry(form, record);
}

export const sharedEntry = (about: About, { record }: LoadedCase): SharedEntry =>
  sharedOf(about, record).entry;

/** The vehicle of the case the recorder rode on; null when none is chosen. */
export const vehicleOf = ({ vehicle }: About, { record }: LoadedCase): string | null =>
  standing(record, 'vehicle').find(({ id }) => id === vehicle)?.id ?? null;
