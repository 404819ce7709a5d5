import {
  CASE_RECORD_VERSION,
  ENTITY_KINDS,
  type CaseRecord,
  type Entity,
  type EntityKind,
  type Reading,
  type RecorderRun,
  type SubjectRef,
} from '~/lib/case/record';
import { fromCanonical } from '~/lib/readings/convert';
import { parseMeasure } from '~/lib/readings/parse-measure';
import { findQuantity, quantityOf } from '~/lib/readings/quantities';
import type { UnitSystem } from '~/lib/readings/unit';

type Fields = Readonly<Record<string, string | number | boolean | null>>;

export type ReadingSpec = {
  readonly quantity: string;
  readonly slot?: string;
  /** As typed, parsed as the app does; a state or a number in canonical units instead. */
  readonly entered?: string;
  readonly value?: number;
  readonly state?: string;
} & Partial<Omit<Reading, 'quantity' | 'slot' | 'entered' | 'value' | 'state' | 'subject'>>;

export type EntitySpec = {
  readonly id: string;
  readonly fields?: Fields;
  readonly readings?: readonly ReadingSpec[];
  readonly removed?: Entity['removed'];
};

export type RecordSpec = {
  readonly fields?: Fields;
  readonly units?: UnitSystem;
  /** Readings about the case itself. */
  readonly readings?: readonly ReadingSpec[];
  readonly recorderRuns?: readonly RecorderRun[];
  readonly changes?: Partial<CaseRecord>;
} & Partial<Readonly<Record<EntityKind, readonly EntitySpec[]>>>;

const CREATED = '2026-03-01T12:00:00.000Z';

/**
 * A case record for tests: records of each kind with their readings beside them. Ids of readings
 * are `<subject>.<quantity>[.<slot>]` unless given. Throws when an entered text cannot be parsed:
 * a test with a typing slip should not pass for another reason.
 */
export function buildRecord(spec: RecordSpec): CaseRecord {
  const units = spec.units ?? 'us';
  const entities = Object.fromEntries(
    ENTITY_KINDS.map((kind) => [
      kind,
      (spec[kind] ?? []).map(({ id, fields = {}, removed = null }, order): Entity => {
        return { id, order, fields, removed, createdAt: CREATED };
      }),
    ]),
  ) as Record<EntityKind, Entity[]>;
  const readings = [
    ...(spec.readings ?? []).map((reading) => toReading({ kind: 'case', id: 'case-1' }, reading, units)),
    ...ENTITY_KINDS.flatMap((kind) =>
      (spec[kind] ?? []).flatMap(({ id, readings: own = [] }) =>
        own.map((reading) => toReading({ kind, id } as SubjectRef, reading, units)),
      ),
    ),
  ];
  return {
    version: CASE_RECORD_VERSION,
    id: 'case-1',
    fields: { number: 'T-1', title: 'Test case', units, ruleSet: 'us-49cfr213', ...spec.fields },
    entities,
    readings,
    photos: [],
    recorderRuns: spec.recorderRuns ?? [],
    traces: [],
    ownShapes: [],
    narrative: { summary: '', determination: '', signatories: '' },
    standings: [],
    judgementChanges: [],
    createdAt: CREATED,
    ...spec.changes,
  };
}

function toReading(subject: SubjectRef, spec: ReadingSpec, units: UnitSystem): Reading {
  const { quantity, slot = '', entered, value, state, ...rest } = spec;
  const measured =
    value !== undefined ? inCanonical(quantity, value) : typed(quantity, entered, state, units);
  return {
    id: [subject.id, quantity, slot].filter((part) => part !== '').join('.'),
    subject,
    quantity,
    slot,
    ...measured,
    state: state ?? null,
    examined: null,
    instrumentId: null,
    personId: null,
    takenAt: null,
    disturbance: 'notSaid',
    sampling: 'notSaid',
    note: '',
    replaces: null,
    reason: null,
    withdrawn: false,
    createdAt: CREATED,
    ...rest,
  };
}

type Typed = { entered: string; unit: string; value: number | null };

function inCanonical(id: string, value: number): Typed {
  const quantity = findQuantity(id);
  if (quantity?.kind !== 'measure') return { entered: String(value), unit: '1', value };
  const unit = quantity.bareUnit.metric;
  return { entered: String(fromCanonical(value, unit, quantity.dimension)), unit, value };
}

function typed(id: string, entered: string | undefined, state: string | undefined, units: UnitSystem): Typed {
  if (entered === undefined) return { entered: state ?? '', unit: '', value: null };
  const quantity = quantityOf(id);
  if (quantity.kind === 'count') return { entered, unit: '1', value: Number(entered) };
  if (quantity.kind !== 'measure') throw new Error(`${id} is not measured: give a state`);
  const parsed = parseMeasure(entered, quantity, units);
  if (!parsed.ok) throw new Error(`${id}: ${parsed.message}`);
  return { entered, unit: parsed.value.unit, value: parsed.value.value };
}

/** Stations every 15 ft 6 in, from the first number of steps before the POD, with readings by quantity. */
export function stationSheet(
  steps: readonly number[],
  readings: Readonly<Record<string, (step: number) => string | null>>,
  fields: (step: number) => Fields = () => ({}),
): readonly EntitySpec[] {
  return steps.map((step) => ({
    id: `s${step}`,
    fields: { name: String(step), disturbance: 'undisturbed', ...fields(step) },
    readings: [
      { quantity: 'stationPosition', entered: `${step * 15.5} ft` },
      ...Object.entries(readings).flatMap(([key, at]): readonly ReadingSpec[] => {
        const entered = at(step);
        const [quantity = '', slot = ''] = key.split('.');
        return entered === null ? [] : [{ quantity, slot, entered }];
      }),
    ],
  }));
}

export const range = (from: number, to: number): readonly number[] =>
  Array.from({ length: to - from + 1 }, (_, index) => from + index);
