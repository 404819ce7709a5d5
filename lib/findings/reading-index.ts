import { currentReadings, standing } from '../case/current';
import {
  ENTITY_KINDS,
  type CaseRecord,
  type Disturbance,
  type Entity,
  type EntityKind,
  type Reading,
} from '../case/record';
import { uncertaintyOf } from '../readings/instrument';
import type { Measure, Quantity, SubjectKind } from '../readings/quantity';
import { findQuantity } from '../readings/quantities';
import type { Method } from './finding';
import { LEFT_OUT_WORDS, stateOf, type LeftOutWhy } from './reading-state';

export type NonEmpty<T> = readonly [T, ...T[]];

/**
 * What a quantity at one place came to, from the readings that stand and were undisturbed.
 * Value and standard uncertainty (k = 1) in the canonical unit of the quantity's dimension.
 */
export type Taken = {
  readonly value: number;
  readonly u: number;
  readonly readings: NonEmpty<string>;
  readonly remarks: readonly string[];
  /** How it was come by, where it is no reading as taken. */
  readonly method?: Method;
};

/** A pass or fail, or a choice, with the readings that say so. */
export type TakenState = {
  readonly state: string;
  readonly readings: NonEmpty<string>;
  readonly remarks: readonly string[];
};

export type ReadingIndex = {
  readonly take: (kind: SubjectKind, id: string, quantity: string, slot?: string) => Taken | null;
  readonly state: (kind: SubjectKind, id: string, quantity: string, slot?: string) => TakenState | null;
  /** `take` and `leftOut` of one quantity at each of many stations, in their order. */
  readonly column: (
    stationIds: readonly string[],
    quantity: string,
    slot?: string,
  ) => { readonly at: readonly (Taken | null)[]; readonly leftOut: readonly (LeftOutWhy | null)[] };
  /** Why there is nothing to take although something was read; null when nothing was read or something stands. */
  readonly leftOut: (kind: SubjectKind, id: string, quantity: string, slot?: string) => LeftOutWhy | null;
  /** Slots of the quantity that anybody read, usable or not, in the order first read. */
  readonly slots: (kind: SubjectKind, id: string, quantity: string) => readonly string[];
  /** Distance of a station from the POD, m: it stays what it is when the track there is disturbed. */
  readonly position: (stationId: string) => number | null;
  /**
   * Undisturbed readings of a wheelset with the local day each was taken, oldest first: those that stand
   * and those left as history, because others were taken more than a month later.
   */
  readonly dated: (wheelsetId: string, quantity: string, slot?: string) => readonly DatedReading[];
  /** Whether anybody read it at all, usable or not. */
  readonly anyRead: (quantity: string) => boolean;
};

/** One reading by its day, in the canonical unit; u is its standard uncertainty (k = 1). */
export type DatedReading = {
  readonly day: string;
  readonly value: number;
  readonly u: number;
  readonly reading: string;
};

type Cell = {
  /** Which cell of the index it is, in the order first read. */
  readonly order: number;
  usable: Reading[];
  /** Readings of a wheel long before the others: its history, not its size now. */
  history: Reading[];
  readonly leftOut: LeftOutWhy[];
  /** Worked out when first asked for; undefined until then. */
  taken: Taken | null | undefined;
};

/** One column of a sheet: a quantity and slot at the subjects of a kind, by their place in the record. */
type CellsOfColumn = (Cell | undefined)[];

/**
 * By kind of subject, quantity, slot and subject. Nested, because joined keys cost more than all the rest;
 * the subject last, because a sheet has thousands of them and few columns.
 */
type Cells = Map<SubjectKind, Map<string, Map<string, CellsOfColumn>>>;

/** The standing records of a kind, and where each stands among them. */
type Subjects = { readonly entities: readonly Entity[]; readonly places: ReadonlyMap<string, number> };

function subjectsOf(record: CaseRecord, kind: EntityKind): Subjects {
  const entities = standing(record, kind);
  return { entities, places: new Map(entities.map(({ id }, place) => [id, place])) };
}

/** Papers and whole trains are not disturbed by a derailment in the way track and equipment are. */
const HAS_STATE: ReadonlySet<SubjectKind> = new Set([
  'mark',
  'station',
  'wheelset',
  'wheelDefect',
  'truck',
  'rail',
  'turnout',
]);

/**
 * Indexes the standing readings of a record by subject, quantity and slot, with those left out
 * that were disturbed, repaired or not said. A reading counts as undisturbed when it or its
 * subject says so and neither says otherwise.
 */
export function indexReadings(record: CaseRecord): ReadingIndex {
  const subjects = new Map(ENTITY_KINDS.map((kind) => [kind, subjectsOf(record, kind)]));
  const byId = (kind: EntityKind): ReadonlyMap<string, Entity> =>
    new Map((subjects.get(kind)?.entities ?? []).map((entity) => [entity.id, entity]));
  const [instruments, wheelsets] = [byId('instrument'), byId('wheelset')];
  // There is one case in a record, whatever its readings call it.
  const placeOf = (kind: SubjectKind, id: string): number | undefined =>
    kind === 'case' ? 0 : subjects.get(kind)?.places.get(id);
  const cells: Cells = new Map();
  const quantitiesRead = new Set<string>();
  let order = 0;
  const positions = new Map<string, number>();

  for (const reading of currentReadings(record)) {
    const { kind, id } = reading.subject;
    const place = placeOf(kind, id);
    if (place === undefined) continue;
    const { quantity, slot, value } = reading;
    if (quantity === 'stationPosition' && value !== null && Number.isFinite(value)) positions.set(id, value);
    const column = columnFor(
      cells,
      kind,
      quantity,
      slot,
      kind === 'case' ? 1 : (subjects.get(kind)?.places.size ?? 0),
    );
    let cell = column[place];
    if (cell === undefined) {
      cell = { order: (order += 1), usable: [], history: [], leftOut: [], taken: undefined };
      column[place] = cell;
    }
    quantitiesRead.add(quantity);
    const state = HAS_STATE.has(kind)
      ? stateOf(reading.disturbance, subjectState(kind, entityAt(subjects, kind, place), wheelsets))
      : stateOf(reading.disturbance, 'undisturbed');
    if (state !== 'undisturbed') {
      cell.leftOut.push(state);
      continue;
    }
    cell.usable.push(reading);
  }

  for (const slots of cells.get('wheelset')?.values() ?? [])
    for (const column of slots.values()) column.forEach((cell) => cell && setHistoryAside(cell));

  const uncertainty = uncertaintyByWriting(instruments);
  const cellAt = (kind: SubjectKind, id: string, quantity: string, slot: string): Cell | undefined =>
    cells.get(kind)?.get(quantity)?.get(slot)?.[placeOf(kind, id) ?? -1];
  const placesInSheet = new WeakMap<readonly string[], readonly number[]>();
  const placesOf = (stationIds: readonly string[]): readonly number[] => {
    const places = placesInSheet.get(stationIds) ?? stationIds.map((id) => placeOf('station', id) ?? -1);
    placesInSheet.set(stationIds, places);
    return places;
  };

  return {
    take: (kind, id, quantity, slot = '') => {
      const cell = cellAt(kind, id, quantity, slot);
      return cell === undefined ? null : takeOnce(cell, findQuantity(quantity), uncertainty);
    },
    column: (stationIds, quantity, slot = '') => {
      const at = new Array<Taken | null>(stationIds.length).fill(null);
      const leftOut = new Array<LeftOutWhy | null>(stationIds.length).fill(null);
      const column = cells.get('station')?.get(quantity)?.get(slot);
      const read = findQuantity(quantity);
      if (column === undefined) return { at, leftOut };
      const places = placesOf(stationIds);
      for (let i = 0; i < places.length; i += 1) {
        const cell = column[places[i]!];
        if (cell === undefined) continue;
        at[i] = takeOnce(cell, read, uncertainty);
        leftOut[i] = whyLeftOut(cell);
      }
      return { at, leftOut };
    },
    state: (kind, id, quantity, slot = '') => {
      const cell = cellAt(kind, id, quantity, slot);
      return cell === undefined ? null : takeState(cell, quantity);
    },
    leftOut: (kind, id, quantity, slot = '') => {
      const cell = cellAt(kind, id, quantity, slot);
      return cell === undefined ? null : whyLeftOut(cell);
    },
    slots: (kind, id, quantity) =>
      [...(cells.get(kind)?.get(quantity) ?? [])]
        .flatMap(([slot, column]) => {
          const cell = column[placeOf(kind, id) ?? -1];
          return cell === undefined ? [] : [{ slot, order: cell.order }];
        })
        .sort((a, b) => a.order - b.order)
        .map(({ slot }) => slot),
    position: (stationId) => positions.get(stationId) ?? null,
    dated: (wheelsetId, quantityId, slot = '') => {
      const cell = cellAt('wheelset', wheelsetId, quantityId, slot);
      const quantity = findQuantity(quantityId);
      if (cell === undefined || quantity?.kind !== 'measure') return [];
      return [...cell.history, ...cell.usable].flatMap((reading): readonly DatedReading[] => {
        const day = dayOf(reading);
        const one = takeOne(reading, quantity, uncertainty);
        return day === null || one === null ? [] : [{ day, value: one.value, u: one.u, reading: reading.id }];
      });
    },
    anyRead: (quantity) => quantitiesRead.has(quantity),
  };
}

const dayOf = ({ takenAt }: Reading): string | null => takenAt?.slice(0, 10) ?? null;

const MONTH_MS = 31 * 24 * 60 * 60 * 1000;

/** A wheel read more than a month before its latest reading had another size then. */
function setHistoryAside(cell: Cell): void {
  const times = cell.usable.flatMap((reading) => Date.parse(dayOf(reading) ?? '') || []);
  if (times.length < 2) return;
  const latest = Math.max(...times);
  const old = (reading: Reading): boolean => latest - (Date.parse(dayOf(reading) ?? '') || latest) > MONTH_MS;
  cell.history = cell.usable.filter(old).sort((a, b) => (a.takenAt ?? '').localeCompare(b.takenAt ?? ''));
  cell.usable = cell.usable.filter((reading) => !old(reading));
}

const entityAt = (subjects: ReadonlyMap<EntityKind, Subjects>, kind: SubjectKind, place: number) =>
  kind === 'case' ? undefined : subjects.get(kind)?.entities[place];

function columnFor(
  cells: Cells,
  kind: SubjectKind,
  quantity: string,
  slot: string,
  length: number,
): CellsOfColumn {
  const quantities = childOf(cells, kind, emptyMap<string, Map<string, CellsOfColumn>>);
  const slots = childOf(quantities, quantity, emptyMap<string, CellsOfColumn>);
  return childOf(slots, slot, () => new Array<Cell | undefined>(length).fill(undefined));
}

const emptyMap = <K, V>(): Map<K, V> => new Map();

const whyLeftOut = ({ usable, leftOut }: Cell): LeftOutWhy | null =>
  usable.length > 0 ? null : (leftOut[0] ?? null);

function childOf<K, V>(parents: Map<K, V>, key: K, make: () => V): V {
  const known = parents.get(key);
  if (known !== undefined) return known;
  const made = make();
  parents.set(key, made);
  return made;
}

/**
 * A defect with worn or rusted metal was there before the derailment, a fresh one may be damage
 * from it; where that could not be told, the wheelset's own state decides.
 */
function subjectState(
  kind: SubjectKind,
  entity: Entity | undefined,
  wheelsets: ReadonlyMap<string, Entity> | undefined,
): Disturbance {
  if (kind !== 'wheelDefect') return asDisturbance(entity?.fields.disturbance);
  if (entity?.fields.appearance === 'old') return 'undisturbed';
  if (entity?.fields.appearance === 'fresh') return 'disturbed';
  return asDisturbance(wheelsets?.get(String(entity?.fields.wheelset))?.fields.disturbance);
}

const asDisturbance = (field: unknown): Disturbance =>
  field === 'undisturbed' || field === 'disturbed' || field === 'repaired' ? field : 'notSaid';

type UncertaintyOf = (reading: Reading, quantity: Measure) => number;

/** A sheet repeats the same few writings many hundred times; each is read once. */
function uncertaintyByWriting(instruments: ReadonlyMap<string, Entity>): UncertaintyOf {
  type ByWriting = Map<string, number>;
  const known = new Map<Measure, Map<string | null, Map<string, ByWriting>>>();
  // Down a column quantity, instrument and unit seldom change.
  let last: { quantity: Measure; instrumentId: string | null; unit: string; writings: ByWriting } | null =
    null;
  return (reading, quantity) => {
    const { entered, unit, instrumentId } = reading;
    if (last?.quantity !== quantity || last.instrumentId !== instrumentId || last.unit !== unit) {
      const byInstrument = childOf(known, quantity, emptyMap<string | null, Map<string, ByWriting>>);
      const byUnit = childOf(byInstrument, instrumentId, emptyMap<string, ByWriting>);
      const writings = childOf(byUnit, unit, emptyMap<string, number>);
      last = { quantity, instrumentId, unit, writings };
    }
    const { writings } = last;
    // What was written, in which unit, fixes the value too, on which the width of a radius depends.
    const before = writings.get(entered);
    if (before !== undefined) return before;
    const { u } = uncertaintyOf(
      reading,
      quantity,
      instrumentId === null ? undefined : instruments.get(instrumentId),
    );
    writings.set(entered, u);
    return u;
  };
}

function takeOnce(cell: Cell, quantity: Quantity | undefined, uncertainty: UncertaintyOf): Taken | null {
  if (cell.taken === undefined) cell.taken = takeMean(cell, quantity, uncertainty);
  return cell.taken;
}

function takeMean(cell: Cell, quantity: Quantity | undefined, uncertainty: UncertaintyOf): Taken | null {
  if (quantity?.kind !== 'measure' && quantity?.kind !== 'count') return null;
  const [only] = cell.usable;
  if (only === undefined) return null;
  if (cell.usable.length === 1 && cell.leftOut.length === 0 && cell.history.length === 0)
    return takeOne(only, quantity, uncertainty);
  const numbers = cell.usable.filter((r) => r.value !== null && Number.isFinite(r.value));
  const [first, ...others] = numbers;
  if (first === undefined) return null;
  const values = numbers.map((reading) => reading.value ?? 0);
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const instrument =
    quantity.kind === 'measure' ? Math.max(...numbers.map((r) => uncertainty(r, quantity))) : 0;
  const scatter =
    values.length < 2
      ? 0
      : Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
  return {
    value: mean,
    u: Math.max(instrument, scatter),
    readings: [first.id, ...others.map((reading) => reading.id)],
    remarks: [
      ...(values.length < 2
        ? []
        : [
            `Mean of ${values.length} standing readings of ${quantity.name.toLowerCase()}; uncertainty from their scatter or the instrument, whichever is larger.`,
          ]),
      ...samplingRemarks(numbers),
      ...besideRemarks(cell),
      ...(cell.history.length === 0
        ? []
        : [
            `${cell.history.length} earlier reading${cell.history.length === 1 ? '' : 's'} of it, from more than a month before, kept as history.`,
          ]),
    ],
  };
}

/** By far the most common case, and a sheet has thousands of them. */
function takeOne(reading: Reading, quantity: Quantity, uncertainty: UncertaintyOf): Taken | null {
  const { value } = reading;
  if (value === null || !Number.isFinite(value)) return null;
  return {
    value,
    u: quantity.kind === 'measure' ? uncertainty(reading, quantity) : 0,
    readings: [reading.id],
    remarks:
      reading.sampling === 'worst' || reading.sampling === 'picked' ? samplingRemarks([reading]) : NONE,
  };
}

const NONE: readonly string[] = [];

function takeState(cell: Cell, quantityId: string): TakenState | null {
  const said = cell.usable.filter((reading) => reading.state !== null);
  const [first, ...others] = said;
  if (first === undefined) return null;
  const states = new Set(said.map((reading) => reading.state));
  // Of a pass and a fail the fail is shown: it is the one somebody has to look into.
  const state = states.has('fail') ? 'fail' : (said.at(-1)?.state ?? '');
  const name = findQuantity(quantityId)?.name ?? quantityId;
  return {
    state,
    readings: [first.id, ...others.map((reading) => reading.id)],
    remarks: [
      ...(states.size < 2 ? [] : [`${name}: the standing records differ; ${state} is taken.`]),
      ...samplingRemarks(said),
      ...besideRemarks(cell),
    ],
  };
}

const samplingRemarks = (readings: readonly Reading[]): readonly string[] => [
  ...(readings.some((r) => r.sampling === 'worst')
    ? ['Read as the worst that was found, not as one of many.']
    : []),
  ...(readings.some((r) => r.sampling === 'picked') ? ['Picked for reading, not one of a full series.'] : []),
];

/** Says when other readings of the same thing were left out beside those taken. */
const besideRemarks = (cell: Cell): readonly string[] =>
  cell.leftOut.length === 0
    ? []
    : [
        `${cell.leftOut.length} other reading${cell.leftOut.length === 1 ? '' : 's'} of it left out: ${[
          ...new Set(cell.leftOut),
        ]
          .map((why) => LEFT_OUT_WORDS[why])
          .join(', ')}.`,
      ];
