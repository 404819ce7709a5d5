import type { LoadedCase } from '~/app/case.server';
import { standing } from '~/lib/case/current';
import type { Disturbance, SubjectRef } from '~/lib/case/record';
import { DISTURBANCES } from '~/lib/case/record';
import { findQuantity } from '~/lib/readings/quantities';
import type { Actor } from '~/db/actor';
import { formKey, valueCell } from './cells';
import { readingsOf } from './index.server';
import { quantityText, readingText } from './wording';

export type TakenReading = { readonly id: string; readonly text: string; readonly slot: string };

/** What the form of readings of one subject needs from the server. */
export type ReadingsView = {
  readonly caseId: string;
  readonly form: string;
  readonly subject: SubjectRef;
  readonly groups: readonly string[];
  /** Cell → the readings that stand there. */
  readonly taken: Readonly<Record<string, readonly TakenReading[]>>;
  /** Changes when a reading is added, corrected or withdrawn, so that the boxes are drawn anew. */
  readonly stamp: string;
  readonly defaults: { readonly person: string; readonly disturbance: Disturbance };
};

const isDisturbance = (value: unknown): value is Disturbance =>
  (DISTURBANCES as readonly unknown[]).includes(value);

function stateOf({ record }: LoadedCase, { kind, id }: SubjectRef): Disturbance {
  if (kind === 'case') return 'notSaid';
  const said = record.entities[kind].find((entity) => entity.id === id)?.fields.disturbance;
  return isDisturbance(said) ? said : 'notSaid';
}

/** The view for `ReadingsForm`; `groups` are ids of the catalogue's groups, in the order shown. */
export function readingsView(
  loaded: LoadedCase,
  subject: SubjectRef,
  groups: readonly string[],
  actor: Actor,
): ReadingsView {
  const taken: Record<string, TakenReading[]> = {};
  for (const reading of readingsOf(loaded, subject)) {
    const named = findQuantity(reading.quantity)?.slots.some(({ id }) => id === reading.slot);
    const known = named || reading.slot === '';
    const text = known
      ? readingText(reading)
      : `${quantityText(reading.quantity, reading.slot)}: ${readingText(reading)}`;
    const cell = valueCell(reading.quantity, known ? reading.slot : '+');
    (taken[cell] ??= []).push({ id: reading.id, text, slot: reading.slot });
  }
  return {
    caseId: loaded.caseId,
    form: formKey(subject, groups),
    subject,
    groups,
    taken,
    stamp: Object.values(taken)
      .flat()
      .reduce((latest, { id }) => (id > latest ? id : latest), ''),
    defaults: { person: actor.personId ?? '', disturbance: stateOf(loaded, subject) },
  };
}

export type ReadingsChoices = {
  readonly people: readonly { readonly id: string; readonly label: string }[];
  readonly instruments: readonly { readonly id: string; readonly label: string }[];
};

/** Who and with what: the same for every form of readings on a page. */
export const readingsChoices = ({ record }: LoadedCase): ReadingsChoices => ({
  people: standing(record, 'person').map(({ id, fields }) => ({ id, label: String(fields.name) })),
  instruments: standing(record, 'instrument').map(({ id, fields }) => ({ id, label: String(fields.name) })),
});
