import type { LoadedCase } from '~/app/case.server';
import type { Actor } from '~/db/actor';
import { addReadings, type NewReading } from '~/db/readings';
import type { SubjectRef } from '~/lib/case/record';
import { GROUPS } from '~/lib/readings/quantities';
import { parseReading } from '~/lib/readings/parse';
import type { Quantity } from '~/lib/readings/quantity';
import type { UnitSystem } from '~/lib/readings/unit';
import {
  examinedCell,
  formKey,
  noteCell,
  OPEN_PLACES,
  placeCell,
  placedCell,
  SHARED_FIELDS,
  valueCell,
  type ReadingsAnswer,
} from './cells';
import { parseExamined } from './examined';
import { readSharedEntry, type SharedEntry } from './shared-entry';

type Sheet = {
  readonly form: FormData;
  readonly subject: SubjectRef;
  readonly system: UnitSystem;
  readonly shared: SharedEntry;
  readonly good: NewReading[];
  readonly questions: string[];
  readonly errors: Record<string, string>;
};

const textOf = (form: FormData, name: string): string => {
  const value = form.get(name);
  return typeof value === 'string' ? value.trim() : '';
};

/** The unit system the case is worked in. */
export const systemOf = (fields: LoadedCase['record']['fields']): UnitSystem =>
  fields.units === 'metric' ? 'metric' : 'us';

function take(sheet: Sheet, quantity: Quantity, slot: string, cell: string): void {
  const entered = textOf(sheet.form, cell);
  if (entered === '') return;
  const parsed = parseReading(entered, quantity, sheet.system);
  if (!parsed.ok) {
    sheet.errors[cell] = parsed.message;
    return;
  }
  const { value, state, unit, question } = parsed.value;
  const asked = quantity.kind === 'observation' ? textOf(sheet.form, examinedCell(quantity.id)) : '';
  const examined = parseExamined(asked, state);
  if (!examined.ok) {
    sheet.errors[examinedCell(quantity.id)] = examined.message;
    return;
  }
  const note = textOf(sheet.form, noteCell(quantity.id)) || sheet.shared.note;
  if (question !== null) sheet.questions.push(question);
  sheet.good.push({
    ...sheet.shared,
    subject: sheet.subject,
    quantity: quantity.id,
    slot,
    entered,
    unit,
    value,
    state,
    examined: examined.value,
    note,
  });
}

function takeOpenPlaces(sheet: Sheet, quantity: Quantity): void {
  for (const n of OPEN_PLACES) {
    const entered = textOf(sheet.form, placedCell(quantity.id, n));
    const place = textOf(sheet.form, placeCell(quantity.id, n)).replace(/\s*°$/, '');
    if (entered === '' && place === '') continue;
    if (!/^\d{1,3}$/.test(place) || Number(place) > 359) {
      sheet.errors[placeCell(quantity.id, n)] = 'Enter the clock position in whole degrees from 0 to 359.';
    } else if (entered === '') {
      sheet.errors[placedCell(quantity.id, n)] = 'Enter what was read there, or empty the position.';
    } else {
      take(sheet, quantity, String(Number(place)), placedCell(quantity.id, n));
    }
  }
}

/** Everything the boxes held that was not kept, and the shared fields, to stand there again. */
function unsaved(sheet: Sheet): Record<string, string> {
  const values: Record<string, string> = {};
  const shared = new Set<string>(SHARED_FIELDS);
  const refused = new Set(
    Object.keys(sheet.errors).map((cell) => cell.split(':').slice(1).join(':').replace(/:$/, '')),
  );
  for (const [name, value] of sheet.form.entries()) {
    if (typeof value !== 'string') continue;
    const about = name.split(':').slice(1).join(':').replace(/:$/, '');
    if (shared.has(name) || refused.has(about)) values[name] = value;
  }
  return values;
}

/**
 * Saves the readings of a sent form that can be read, and says of the others why they cannot.
 * Nothing is saved while one of the shared fields is wrong: it would be wrong in every reading.
 */
export function takeReadings(
  form: FormData,
  { db, caseId, record }: LoadedCase,
  subject: SubjectRef,
  groups: readonly string[],
  actor: Actor,
): ReadingsAnswer {
  const { entry, errors: sharedErrors } = readSharedEntry(form, record);
  const sheet: Sheet = {
    form,
    subject,
    system: systemOf(record.fields),
    shared: entry,
    good: [],
    questions: [],
    errors: { ...sharedErrors },
  };
  const wanted = GROUPS.filter((group) => groups.includes(group.id) && group.subject === subject.kind);
  for (const quantity of wanted.flatMap((group) => group.quantities)) {
    const slots = quantity.slots.length === 0 ? [''] : quantity.slots.map(({ id }) => id);
    for (const slot of slots) take(sheet, quantity, slot, valueCell(quantity.id, slot));
    if (quantity.openSlots) takeOpenPlaces(sheet, quantity);
  }
  const blocked = Object.keys(sharedErrors).length > 0;
  if (!blocked) addReadings(db, caseId, sheet.good, actor);
  return {
    form: formKey(subject, groups),
    saved: blocked ? 0 : sheet.good.length,
    questions: blocked ? [] : sheet.questions,
    errors: sheet.errors,
    values: blocked ? textsOf(form) : unsaved(sheet),
    stamp: new Date().toISOString(),
  };
}

const textsOf = (form: FormData): Record<string, string> =>
  Object.fromEntries(
    [...form.entries()].filter((pair): pair is [string, string] => typeof pair[1] === 'string'),
  );
