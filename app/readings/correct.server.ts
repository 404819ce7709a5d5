import type { LoadedCase } from '~/app/case.server';
import type { Actor } from '~/db/actor';
import { correctReading } from '~/db/readings';
import type { Reading } from '~/lib/case/record';
import { parseReading } from '~/lib/readings/parse';
import { findQuantity } from '~/lib/readings/quantities';
import { parseExamined } from './examined';
import { readSharedEntry } from './shared-entry';
import { systemOf } from './take.server';

export type Corrected =
  | { readonly ok: true; readonly id: string }
  | {
      readonly ok: false;
      readonly errors: Readonly<Record<string, string>>;
      readonly values: Readonly<Record<string, string>>;
    };

/** Puts what was sent in the place of the reading, or says what to enter instead. */
export function correct(
  form: FormData,
  { db, caseId, record }: LoadedCase,
  old: Reading,
  actor: Actor,
): Corrected {
  const values = Object.fromEntries(
    [...form.entries()].filter((pair): pair is [string, string] => typeof pair[1] === 'string'),
  );
  const refuse = (errors: Record<string, string>): Corrected => ({ ok: false, errors, values });
  const quantity = findQuantity(old.quantity);
  if (!quantity) return refuse({ value: 'This quantity is no longer read. Withdraw the reading instead.' });

  const { entry, errors } = readSharedEntry(form, record);
  const entered = (values.value ?? '').trim();
  const parsed = parseReading(entered, quantity, systemOf(record.fields));
  if (!parsed.ok) return refuse({ ...errors, value: parsed.message });
  const examined = parseExamined(values.examined ?? '', parsed.value.state);
  if (!examined.ok) return refuse({ ...errors, examined: examined.message });
  if (Object.keys(errors).length > 0) return refuse(errors);

  const { value, state, unit } = parsed.value;
  const corrected = correctReading(
    db,
    caseId,
    old.id,
    {
      ...entry,
      subject: old.subject,
      quantity: old.quantity,
      slot: old.slot,
      entered,
      unit,
      value,
      state,
      examined: quantity.kind === 'observation' ? examined.value : null,
    },
    values.reason ?? '',
    actor,
  );
  return corrected.ok ? { ok: true, id: corrected.value } : refuse({ reason: corrected.message });
}
