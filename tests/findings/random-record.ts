import fc from 'fast-check';
import {
  DISTURBANCES,
  ENTITY_KINDS,
  SAMPLINGS,
  type CaseRecord,
  type EntityKind,
  type Reading,
} from '~/lib/case/record';
import { KINDS } from '~/lib/case/kinds';
import { caseKind } from '~/lib/case/kinds';
import type { Field } from '~/lib/case/kind';
import { GROUPS } from '~/lib/readings/quantities';
import type { Quantity } from '~/lib/readings/quantity';
import { buildRecord, type EntitySpec, type ReadingSpec } from './record-builder';

type Value = string | number | boolean | null;

const disturbance = fc.oneof(
  { weight: 8, arbitrary: fc.constantFrom('undisturbed' as const) },
  { weight: 2, arbitrary: fc.constantFrom(...DISTURBANCES) },
);

/** A field as a form could leave it: empty, or anything it allows. */
function fieldValue(
  field: Field,
  ids: Readonly<Partial<Record<string, readonly string[]>>>,
): fc.Arbitrary<Value> {
  switch (field.type) {
    case 'integer':
      return fc.option(fc.integer({ min: field.min, max: field.max }));
    case 'flag':
      return fc.option(fc.boolean(), { freq: 10 });
    case 'choice':
      return field.id === 'disturbance'
        ? disturbance
        : fc.option(fc.constantFrom(...field.choices.map(({ id }) => id)), { freq: 10 });
    case 'ref':
      return fc.constantFrom(...(ids[field.to] ?? []), 'nobody', null);
    default:
      return fc.option(fc.constantFrom('0', '-15.5 ft', 'POD', 'Station 1', 'x', '1/16 in', '136RE'));
  }
}

const fieldsOf = (fields: readonly Field[], ids: Readonly<Partial<Record<string, readonly string[]>>>) =>
  fc.record(Object.fromEntries(fields.map((field) => [field.id, fieldValue(field, ids)])));

function readingOf(quantity: Quantity): fc.Arbitrary<ReadingSpec> {
  const slots = [...quantity.slots.map(({ id }) => id), ...(quantity.openSlots ? ['45', '97'] : [])];
  const slot = slots.length === 0 ? fc.constant('') : fc.constantFrom(...slots);
  const shared = {
    slot,
    id: fc.uuid(),
    disturbance,
    sampling: fc.constantFrom(...SAMPLINGS),
    instrumentId: fc.option(fc.constantFrom('instrument-0', 'gone')),
  };
  switch (quantity.kind) {
    case 'measure': {
      const [min, max] = quantity.possible;
      // Stations miles or hairs apart have nothing to do with one another: metres, near the POD.
      const value =
        quantity.id === 'stationPosition'
          ? fc.integer({ min: -60, max: 20 })
          : fc.double({ min, max, noNaN: true });
      return fc.record({ ...shared, value }).map((reading) => ({ ...reading, quantity: quantity.id }));
    }
    case 'count': {
      const [min, max] = quantity.possible;
      return fc
        .record({ ...shared, value: fc.integer({ min, max }) })
        .map((reading) => ({ ...reading, quantity: quantity.id }));
    }
    case 'goNoGo':
      return fc
        .record({ ...shared, state: fc.constantFrom('pass', 'fail') })
        .map((reading) => ({ ...reading, quantity: quantity.id }));
    case 'choice':
      return fc
        .record({ ...shared, state: fc.constantFrom(...quantity.choices.map(({ id }) => id)) })
        .map((reading) => ({ ...reading, quantity: quantity.id }));
    case 'observation':
      return fc
        .record({ ...shared, state: fc.constantFrom('seen', 'notFound', 'couldNotTell') })
        .map((reading) => ({ ...reading, quantity: quantity.id }));
  }
}

const quantitiesOf = (kind: string): readonly Quantity[] =>
  GROUPS.filter(({ subject }) => subject === kind).flatMap(({ quantities }) => quantities);

const readingsFor = (kind: string): fc.Arbitrary<readonly ReadingSpec[]> => {
  const quantities = quantitiesOf(kind);
  return quantities.length === 0
    ? fc.constant([])
    : fc.array(fc.constantFrom(...quantities).chain(readingOf), {
        minLength: quantities.length,
        maxLength: 2 * quantities.length,
      });
};

const COUNT = 3;
const IDS = Object.fromEntries(
  ENTITY_KINDS.map((kind) => [kind, Array.from({ length: COUNT }, (_, index) => `${kind}-${index}`)]),
);

const entitiesOf = (kind: EntityKind): fc.Arbitrary<readonly EntitySpec[]> =>
  fc
    .array(
      fc.record({
        fields: fieldsOf(KINDS[kind].fields, IDS),
        readings: readingsFor(kind),
        removed: fc.oneof(
          { weight: 9, arbitrary: fc.constant(null) },
          { weight: 1, arbitrary: fc.constant({ at: '2026-03-02T00:00:00.000Z', reason: 'entered twice' }) },
        ),
      }),
      { minLength: 1, maxLength: kind === 'station' ? 9 : COUNT },
    )
    .map((all) => all.map((entity, index) => ({ ...entity, id: `${kind}-${index}` })));

/** Cases half filled in, in every way the forms allow, with some readings corrected or withdrawn. */
export const randomRecord: fc.Arbitrary<CaseRecord> = fc
  .record({
    fields: fieldsOf(caseKind.fields, {}),
    readings: readingsFor('case'),
    entities: fc.record(
      Object.fromEntries(ENTITY_KINDS.map((kind) => [kind, entitiesOf(kind)])) as Record<
        EntityKind,
        fc.Arbitrary<readonly EntitySpec[]>
      >,
    ),
    withdrawn: fc.array(fc.nat(), { maxLength: 3 }),
  })
  .map(({ fields, readings, entities, withdrawn }) => {
    const record = buildRecord({ fields, readings, ...entities });
    return { ...record, readings: withWithdrawals(record.readings, withdrawn) };
  });

function withWithdrawals(readings: readonly Reading[], which: readonly number[]): readonly Reading[] {
  const rows = which.flatMap((index, n): readonly Reading[] => {
    const old = readings[index % Math.max(1, readings.length)];
    return old === undefined
      ? []
      : [{ ...old, id: `withdrawal-${n}`, value: null, state: null, withdrawn: true, replaces: old.id }];
  });
  return [...readings, ...rows];
}
