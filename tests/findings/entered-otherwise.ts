import type { CaseRecord, Entity, EntityKind, Reading } from '~/lib/case/record';
import { ENTITY_KINDS } from '~/lib/case/record';
import { integerGenerator } from '~/lib/readings/draws';
import { fromCanonical } from '~/lib/readings/convert';
import { parseMeasure } from '~/lib/readings/parse-measure';
import { findQuantity } from '~/lib/readings/quantities';
import { unitLabel } from '~/lib/readings/spelling';
import type { UnitSystem } from '~/lib/readings/unit';

type Fields = Entity['fields'];

const withFields = (
  record: CaseRecord,
  kind: EntityKind,
  change: (fields: Fields) => Fields,
): CaseRecord => ({
  ...record,
  entities: {
    ...record.entities,
    [kind]: record.entities[kind].map((entity) => ({ ...entity, fields: change(entity.fields) })),
  },
});

const mapped = (fields: Fields, field: string, change: (text: string) => string): Fields =>
  typeof fields[field] === 'string' ? { ...fields, [field]: change(fields[field]) } : fields;

const SWAPPED: Readonly<Record<string, string>> = {
  left: 'right',
  right: 'left',
  curveLeft: 'curveRight',
  curveRight: 'curveLeft',
};
const swapped = (word: string): string => SWAPPED[word] ?? word;

/** "-46.5 ft" is 46.5 ft to the other side of the POD; words such as "before" speak of the train. */
const turnedPlace = (where: string): string => {
  const distance = /^(-?)([\d./]+ (?:ft|m|in))$/.exec(where);
  return distance === null ? where : `${distance[1] === '-' ? '' : '-'}${distance[2]}`;
};

/**
 * What the crew wrote of `reading` when it stood facing the other way: by quantity, whether its
 * number changes sign, and as which quantity it was written.
 */
const FACING: Readonly<Record<string, { readonly sign: boolean; readonly as?: string }>> = {
  'station stationPosition': { sign: true },
  'vehicle leadingAxleAt': { sign: true },
  'mark markStart': { sign: true, as: 'markEnd' },
  'mark markEnd': { sign: true, as: 'markStart' },
  'mark markOffsetStart': { sign: false, as: 'markOffsetEnd' },
  'mark markOffsetEnd': { sign: false, as: 'markOffsetStart' },
  'lineStretch lineFrom': { sign: true, as: 'lineTo' },
  'lineStretch lineTo': { sign: true, as: 'lineFrom' },
  'lineStretch lineGrade': { sign: true },
};

/** Kinds whose readings are of the left and of the right rail, as seen facing the direction of travel. */
const BY_RAIL = new Set(['station', 'mark']);

const minus = (value: number): number => (value === 0 ? 0 : -value);

/**
 * The same place as a crew writes it down that walked facing against the direction of travel, and
 * says so. A mark or a row of the line’s profile with one end known keeps that end.
 */
export function writtenFacingBack(record: CaseRecord): CaseRecord {
  const curved = record.fields.alignment === 'curveLeft' || record.fields.alignment === 'curveRight';
  const known = (id: string, quantity: string): boolean =>
    record.readings.some((each) => each.subject.id === id && each.quantity === quantity);
  const readings = record.readings.map((reading): Reading => {
    const { kind, id } = reading.subject;
    const rule = FACING[`${kind} ${reading.quantity}`];
    const otherEnd =
      rule?.as !== undefined && bothEnds(kind, (quantity) => known(id, quantity)) ? rule.as : null;
    const crosslevelOfTangent = kind === 'station' && reading.quantity === 'crosslevel' && !curved;
    const changes = rule?.sign === true || crosslevelOfTangent;
    return {
      ...reading,
      quantity: otherEnd ?? reading.quantity,
      slot: BY_RAIL.has(kind) ? swapped(reading.slot) : reading.slot,
      value: reading.value !== null && changes ? minus(reading.value) : reading.value,
      state:
        kind === 'case' && reading.quantity === 'lineRail' ? swapped(reading.state ?? '') : reading.state,
    };
  });
  const turned = [
    (each: CaseRecord) => withFields(each, 'station', (fields) => mapped(fields, 'joint', swapped)),
    (each: CaseRecord) => withFields(each, 'mark', (fields) => mapped(fields, 'rail', swapped)),
    (each: CaseRecord) =>
      withFields(each, 'rail', (fields) => mapped(mapped(fields, 'rail', swapped), 'where', turnedPlace)),
    (each: CaseRecord) => withFields(each, 'lineStretch', (fields) => mapped(fields, 'hand', swapped)),
  ].reduce((each, turn) => turn(each), record);
  return {
    ...turned,
    fields: mapped(record.fields, 'alignment', swapped),
    readings: [...readings, facingAgainst(record)],
  };
}

/** What the sheet says of how it was read. */
const facingAgainst = ({ id, createdAt }: CaseRecord): Reading => ({
  id: 'sheetFacing',
  subject: { kind: 'case', id },
  quantity: 'sheetFacing',
  slot: '',
  entered: '',
  unit: '',
  value: null,
  state: 'against',
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
  createdAt,
});

const bothEnds = (kind: string, known: (quantity: string) => boolean): boolean =>
  kind === 'mark' ? known('markStart') && known('markEnd') : known('lineFrom') && known('lineTo');

/** The case shown in the other units; what was entered stays as it was. */
export const shownIn = (record: CaseRecord, units: UnitSystem): CaseRecord => ({
  ...record,
  fields: { ...record.fields, units },
});

/** Digits enough that the other unit is the same reading to a millionth of it. */
const DIGITS = 9;

/** Every reading entered again in the other units, as somebody would type it. Throws where that is refused. */
export function enteredIn(record: CaseRecord, units: UnitSystem): CaseRecord {
  return {
    ...shownIn(record, units),
    readings: record.readings.map((reading): Reading => {
      const quantity = findQuantity(reading.quantity);
      if (quantity?.kind !== 'measure' || reading.value === null) return reading;
      const unit = quantity.bareUnit[units];
      const number = fromCanonical(reading.value, unit, quantity.dimension);
      if (!Number.isFinite(number)) return reading;
      const entered = `${Number(number.toPrecision(DIGITS))} ${unitLabel(unit)}`.trim();
      const parsed = parseMeasure(entered, quantity, units);
      if (!parsed.ok) throw new Error(`${reading.quantity}: ${parsed.message}`);
      return { ...reading, entered, unit: parsed.value.unit, value: parsed.value.value };
    }),
  };
}

/** Stations chalked with other numbers; places of rails that name one follow. */
export function chalkedAnew(record: CaseRecord, name: (old: string) => string): CaseRecord {
  const chalked = withFields(record, 'station', (fields) => mapped(fields, 'name', name));
  return withFields(chalked, 'rail', (fields) =>
    mapped(fields, 'where', (where) =>
      where.replace(/^(Station )(.+)$/, (_, word: string, old: string) => word + name(old)),
    ),
  );
}

/** Distances along the track, by the quantity they are read as. */
const ALONG = new Set([
  'stationPosition',
  'markStart',
  'markEnd',
  'leadingAxleAt',
  'pointPlace',
  'lineFrom',
  'lineTo',
]);

/** All distances along the track counted from another place, `byM` before the first one. */
export const countedFrom = (record: CaseRecord, byM: number): CaseRecord => ({
  ...record,
  readings: record.readings.map((reading) =>
    ALONG.has(reading.quantity) && reading.value !== null
      ? { ...reading, value: reading.value + byM }
      : reading,
  ),
});

/** Said of a case whose train turns out to have run the other way; nothing is entered again. */
export const ranTheOtherWay = (record: CaseRecord): CaseRecord => ({
  ...record,
  readings: [...record.readings, facingAgainst(record)],
});

/** Stations no two of which lie at one place. */
export const apart = (record: CaseRecord): CaseRecord => {
  const taken = new Set<number>();
  return {
    ...record,
    readings: record.readings.map((reading) => {
      if (reading.quantity !== 'stationPosition' || reading.value === null) return reading;
      let { value } = reading;
      while (taken.has(value)) value += 0.3;
      taken.add(value);
      return { ...reading, value };
    }),
  };
};

/** Only some of the stations, as if the sheet ended there. */
export const onlyStations = (record: CaseRecord, which: (index: number) => boolean): CaseRecord => ({
  ...record,
  entities: {
    ...record.entities,
    station: record.entities.station.filter((_, index) => which(index)),
  },
});

function shuffled<T>(items: readonly T[], key: string, seed: number): readonly T[] {
  const next = integerGenerator(key, seed);
  return items
    .map((item) => ({ item, at: next() }))
    .sort((a, b) => a.at - b.at)
    .map(({ item }) => item);
}

const cellOf = ({ subject, quantity, slot }: Reading): string =>
  `${subject.kind}|${subject.id}|${quantity}|${slot}`;

/** Everything entered in another order; readings of one cell keep theirs, as a second one may differ from the first. */
export function inAnotherOrder(record: CaseRecord, seed: number): CaseRecord {
  const cells = new Map<string, Reading[]>();
  for (const reading of record.readings) {
    const cell = cells.get(cellOf(reading)) ?? [];
    cell.push(reading);
    cells.set(cellOf(reading), cell);
  }
  const order = shuffled(record.readings.map(cellOf), 'readings', seed);
  const taken = new Map<string, number>();
  const readings = order.flatMap((cell) => {
    const at = taken.get(cell) ?? 0;
    taken.set(cell, at + 1);
    return cells.get(cell)?.[at] ?? [];
  });
  return {
    ...record,
    readings,
    entities: Object.fromEntries(
      ENTITY_KINDS.map((kind) => [
        kind,
        shuffled(record.entities[kind], kind, seed).map((entity, order) => ({ ...entity, order })),
      ]),
    ) as unknown as CaseRecord['entities'],
  };
}

/** The sheet entered in two goes: the stations from `at` on come first, then those before them, then gauge and crosslevel. */
export function inTwoGoes(record: CaseRecord, at: number): CaseRecord {
  const stations = record.entities.station;
  const ids = new Set(stations.slice(at).map(({ id }) => id));
  const first = record.readings.filter(({ subject }) => ids.has(subject.id));
  const rest = record.readings.filter(({ subject }) => !ids.has(subject.id));
  const late = new Set(['gauge', 'crosslevel']);
  const [now, later] = [
    rest.filter(({ quantity }) => !late.has(quantity)),
    rest.filter(({ quantity }) => late.has(quantity)),
  ];
  return {
    ...record,
    readings: [...first, ...now, ...later],
    entities: {
      ...record.entities,
      station: [...stations.slice(at), ...stations.slice(0, at)].map((entity, order) => ({
        ...entity,
        order,
      })),
    },
  };
}
