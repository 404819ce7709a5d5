import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { caseFindings } from '~/app/findings/case-findings.server';
import { findingHref } from '~/app/findings/view.server';
import { localTime, moment } from '~/app/times';
import { nameOf } from '~/lib/case/name-of';
import type { CaseRecord, Reading } from '~/lib/case/record';
import { formatWithUncertainty } from '~/lib/readings/format';
import { uncertaintyOf } from '~/lib/readings/instrument';
import { findQuantity } from '~/lib/readings/quantities';
import { systemOf } from './take.server';
import { DISTURBANCE_LABELS, quantityText, readingText, SAMPLING_LABELS } from './wording';

/** All versions of one reading, the first one first. */
export function versionsOf(record: CaseRecord, reading: Reading): readonly Reading[] {
  const byId = new Map(record.readings.map((each) => [each.id, each]));
  const replacedBy = new Map(
    record.readings.flatMap((each) => (each.replaces === null ? [] : [[each.replaces, each] as const])),
  );
  let first = reading;
  for (let older = first; older.replaces !== null;) {
    const before = byId.get(older.replaces);
    if (!before) break;
    first = older = before;
  }
  const versions = [first];
  for (let next = replacedBy.get(first.id); next; next = replacedBy.get(next.id)) versions.push(next);
  return versions;
}

export type Fact = { readonly label: string; readonly text: string };

function measured(record: CaseRecord, reading: Reading): readonly Fact[] {
  const quantity = findQuantity(reading.quantity);
  if (quantity?.kind !== 'measure' || reading.value === null) return [];
  const instrument = record.entities.instrument.find(({ id }) => id === reading.instrumentId);
  const { u, basis } = uncertaintyOf(reading, quantity, instrument);
  const system = systemOf(record.fields);
  const other = system === 'us' ? 'metric' : 'us';
  const show = (each: typeof system) =>
    formatWithUncertainty(reading.value ?? 0, u, quantity.dimension, each, { unit: quantity.bareUnit[each] });
  return [
    { label: 'Value with uncertainty', text: show(system) },
    { label: 'In the other units', text: show(other) },
    { label: 'What the uncertainty rests on', text: basis },
  ];
}

/** Everything kept about one reading, in words. */
export function factsOf(record: CaseRecord, reading: Reading): readonly Fact[] {
  const name = (kind: 'person' | 'instrument', id: string | null, none: string) =>
    id === null ? none : nameOf(record, { kind, id });
  return [
    { label: 'Of', text: nameOf(record, reading.subject) },
    ...(reading.withdrawn
      ? []
      : [{ label: 'As entered', text: reading.state === null ? reading.entered : readingText(reading) }]),
    ...measured(record, reading),
    { label: 'Taken by', text: name('person', reading.personId, 'not said') },
    { label: 'When (local time)', text: reading.takenAt ? localTime(reading.takenAt) : 'not said' },
    { label: 'With', text: name('instrument', reading.instrumentId, 'ordinary instrument, not named') },
    { label: 'State when read', text: DISTURBANCE_LABELS[reading.disturbance] },
    { label: 'How it was chosen', text: SAMPLING_LABELS[reading.sampling] },
    { label: 'Note', text: reading.note || 'none' },
    { label: 'Entered here', text: moment(reading.createdAt) },
  ];
}

export type Version = {
  readonly id: string;
  readonly text: string;
  readonly at: string;
  readonly reason: string | null;
  readonly shown: boolean;
};

export type UsedIn = { readonly id: string; readonly title: string; readonly href: string };

const findingsByReading = (loaded: LoadedCase): ReadonlyMap<string, readonly UsedIn[]> =>
  derived(loaded, 'findings by reading', () => {
    const map = new Map<string, UsedIn[]>();
    for (const finding of caseFindings(loaded)) {
      if (!('readings' in finding)) continue;
      for (const id of new Set(finding.readings)) {
        const list = map.get(id) ?? [];
        list.push({ id: finding.id, title: finding.title, href: findingHref(loaded.caseId, finding.id) });
        map.set(id, list);
      }
    }
    return map;
  });

export function trailOf(loaded: LoadedCase, reading: Reading) {
  const { record } = loaded;
  const versions = versionsOf(record, reading);
  const newest = versions.at(-1) ?? reading;
  return {
    title: quantityText(reading.quantity, reading.slot),
    facts: factsOf(record, reading),
    newest,
    isNewest: newest.id === reading.id,
    usedIn: findingsByReading(loaded).get(reading.id) ?? [],
    versions: versions.map((each): Version => ({
      id: each.id,
      text: readingText(each),
      at: moment(each.createdAt),
      reason: each.reason,
      shown: each.id === reading.id,
    })),
  };
}
