import { currentReadings, standing } from '../case/current';
import {
  ENTITY_KINDS,
  type CaseRecord,
  type Disturbance,
  type Entity,
  type EntityKind,
} from '../case/record';
import type { SubjectKind } from '../readings/quantity';
import { findQuantity } from '../readings/quantities';
import { childOf } from './child-of';
import { cellAt, cellColumn, putReading, type CellColumn } from './cells';
import { emptyColumn, inOrderOf, readColumns, type ColumnRead } from './column-read';
import type { Method } from './finding';
import { stateOf, type LeftOutWhy } from './reading-state';
import { dayOf, setHistoryAside, takeAt, takeOne, takeState, whyLeftOut } from './take';
import { uncertaintyByWriting } from './uncertainty-by-writing';

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
  readonly column: (stationIds: readonly string[], quantity: string, slot?: string) => ColumnRead;
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

/**
 * By kind of subject, quantity, slot and subject. Nested, because joined keys cost more than all the rest;
 * the subject last, because a sheet has thousands of them and few columns.
 */
type Cells = Map<SubjectKind, Map<string, Map<string, CellColumn>>>;

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
  const uncertaintyOf = uncertaintyByWriting(instruments);
  const cells: Cells = new Map();
  const columnFor = (kind: SubjectKind, quantity: string, slot: string): CellColumn => {
    const quantities = childOf(cells, kind, () => new Map<string, Map<string, CellColumn>>());
    const slots = childOf(quantities, quantity, () => new Map<string, CellColumn>());
    return childOf(slots, slot, () => {
      const read = findQuantity(quantity);
      const length = kind === 'case' ? 1 : (subjects.get(kind)?.places.size ?? 0);
      return cellColumn(read, uncertaintyOf(read), length);
    });
  };
  const quantitiesRead = new Set<string>();
  let count = 0;
  const positions = new Map<string, number>();

  for (const reading of currentReadings(record)) {
    const { kind, id } = reading.subject;
    const place = placeOf(kind, id);
    if (place === undefined) continue;
    const { quantity, slot, value } = reading;
    if (quantity === 'stationPosition' && value !== null && Number.isFinite(value)) positions.set(id, value);
    quantitiesRead.add(quantity);
    count += 1;
    const state = HAS_STATE.has(kind)
      ? stateOf(reading.disturbance, subjectState(kind, entityAt(subjects, kind, place), wheelsets))
      : stateOf(reading.disturbance, 'undisturbed');
    const leftOut = state === 'undisturbed' ? null : state;
    putReading(columnFor(kind, quantity, slot), place, { reading, leftOut, count });
  }

  for (const slots of cells.get('wheelset')?.values() ?? [])
    for (const column of slots.values()) column.cells.forEach((cell) => cell && setHistoryAside(cell));

  const columnOf = (kind: SubjectKind, quantity: string, slot: string): CellColumn | undefined =>
    cells.get(kind)?.get(quantity)?.get(slot);
  const readOfStations = (columns: readonly CellColumn[]): ReadonlyMap<CellColumn, ColumnRead> =>
    readColumns(columns, subjects.get('station')?.entities.length ?? 0);
  let sheet: ReadonlyMap<CellColumn, ColumnRead> | null = null;
  const sheetColumn = (column: CellColumn): ColumnRead | undefined => {
    sheet ??= readOfStations(
      [...(cells.get('station') ?? [])].flatMap(([quantity, slots]) =>
        // Where the stations are is asked of `position`, and each is written differently.
        quantity === 'stationPosition' ? [] : [...slots.values()],
      ),
    );
    return sheet.get(column) ?? readOfStations([column]).get(column);
  };
  const nothings = new WeakMap<readonly string[], ColumnRead>();
  const nothingAt = (stationIds: readonly string[]): ColumnRead => {
    const nothing = nothings.get(stationIds) ?? emptyColumn(stationIds.length);
    nothings.set(stationIds, nothing);
    return nothing;
  };
  const placesInSheet = new WeakMap<readonly string[], readonly number[]>();
  const placesOf = (stationIds: readonly string[]): readonly number[] => {
    const places = placesInSheet.get(stationIds) ?? stationIds.map((id) => placeOf('station', id) ?? -1);
    placesInSheet.set(stationIds, places);
    return places;
  };

  return {
    take: (kind, id, quantity, slot = '') => {
      const column = columnOf(kind, quantity, slot);
      return column === undefined ? null : takeAt(column, placeOf(kind, id) ?? -1);
    },
    column: (stationIds, quantity, slot = '') => {
      const column = columnOf('station', quantity, slot);
      const read = column && sheetColumn(column);
      return read === undefined ? nothingAt(stationIds) : inOrderOf(placesOf(stationIds), read);
    },
    state: (kind, id, quantity, slot = '') => {
      const column = columnOf(kind, quantity, slot);
      const cell = column && cellAt(column, placeOf(kind, id) ?? -1);
      return cell ? takeState(cell, quantity) : null;
    },
    leftOut: (kind, id, quantity, slot = '') => {
      const column = columnOf(kind, quantity, slot);
      return column === undefined ? null : whyLeftOut(column, placeOf(kind, id) ?? -1);
    },
    slots: (kind, id, quantity) =>
      [...(cells.get(kind)?.get(quantity) ?? [])]
        .flatMap(([slot, column]) => {
          const order = column.order[placeOf(kind, id) ?? -1] ?? 0;
          return order === 0 ? [] : [{ slot, order }];
        })
        .sort((a, b) => a.order - b.order)
        .map(({ slot }) => slot),
    position: (stationId) => positions.get(stationId) ?? null,
    dated: (wheelsetId, quantityId, slot = '') => {
      const column = columnOf('wheelset', quantityId, slot);
      const cell = column && cellAt(column, placeOf('wheelset', wheelsetId) ?? -1);
      if (column?.quantity?.kind !== 'measure' || !cell) return [];
      return [...cell.history, ...cell.usable].flatMap((reading): readonly DatedReading[] => {
        const day = dayOf(reading);
        const one = takeOne(reading, column.uncertainty);
        return day === null || one === null ? [] : [{ day, value: one.value, u: one.u, reading: reading.id }];
      });
    },
    anyRead: (quantity) => quantitiesRead.has(quantity),
  };
}

const entityAt = (subjects: ReadonlyMap<EntityKind, Subjects>, kind: SubjectKind, place: number) =>
  kind === 'case' ? undefined : subjects.get(kind)?.entities[place];

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
