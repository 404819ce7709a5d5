import { currentReadings } from './current';
import { turnedWhere } from './rail-where';
import type { CaseRecord, Entity, Reading } from './record';

/** Distances along the track from the POD: before it becomes past it. */
const ALONG = new Set(['stationPosition', 'markStart', 'markEnd', 'leadingAxleAt', 'lineFrom', 'lineTo']);

/** What rises one way falls the other. */
const RISES = new Set(['lineGrade']);

/** The two ends of a mark change places; a mark of which one end was read keeps it as it is. */
const ENDS: Readonly<Record<string, string>> = {
  markStart: 'markEnd',
  markEnd: 'markStart',
  markOffsetStart: 'markOffsetEnd',
  markOffsetEnd: 'markOffsetStart',
};

const OTHER: Readonly<Record<string, string>> = {
  left: 'right',
  right: 'left',
  curveLeft: 'curveRight',
  curveRight: 'curveLeft',
};

const turned = (word: string): string => OTHER[word] ?? word;

const turnedField = (fields: Entity['fields'], field: string): Entity['fields'] =>
  typeof fields[field] === 'string' ? { ...fields, [field]: turned(fields[field]) } : fields;

/** Fields of the records that say which rail. */
const RAIL_FIELDS = { station: 'joint', mark: 'rail', rail: 'rail', lineStretch: 'hand' } as const;

/** Whether the sheet was read facing against the direction of travel, as last said of the case. */
export const readAgainstTravel = (record: CaseRecord): boolean =>
  currentReadings(record)
    .filter(({ quantity, subject }) => quantity === 'sheetFacing' && subject.kind === 'case')
    .at(-1)?.state === 'against';

/**
 * The record as it reads facing the direction of travel. Where the case says that positions, left
 * and right were read facing against it, distances from the POD change sign, left and right rails
 * and the hand of the curve change places, and crosslevel of tangent, which counts the left rail,
 * changes sign; on a curve it counts the outer rail and stays. Stations, marks, rails, the line’s profile
 * (its grades change sign) and where vehicles stood are turned; equipment itself and turnouts are not. Readings keep their ids and what was entered.
 */
export function facingTravel(record: CaseRecord): CaseRecord {
  if (!readAgainstTravel(record)) return record;
  const onCurve = record.fields.alignment === 'curveLeft' || record.fields.alignment === 'curveRight';
  const ends = marksWithBothEnds(record);
  const turn = (reading: Reading): Reading => {
    const { kind, id } = reading.subject;
    if (kind === 'case')
      return reading.quantity === 'lineRail' && reading.state !== null
        ? { ...reading, state: turned(reading.state) }
        : reading;
    if (kind === 'vehicle' && reading.quantity !== 'leadingAxleAt') return reading;
    if (kind !== 'station' && kind !== 'mark' && kind !== 'vehicle' && kind !== 'lineStretch') return reading;
    const changesSign =
      ALONG.has(reading.quantity) ||
      RISES.has(reading.quantity) ||
      (reading.quantity === 'crosslevel' && kind === 'station' && !onCurve);
    return {
      ...reading,
      slot: turned(reading.slot),
      quantity: ends.has(id) ? (ENDS[reading.quantity] ?? reading.quantity) : reading.quantity,
      // Zero stays zero and not minus zero.
      value: reading.value === null || !changesSign || reading.value === 0 ? reading.value : -reading.value,
    };
  };
  const entities = { ...record.entities };
  for (const kind of ['station', 'mark', 'rail', 'lineStretch'] as const) {
    entities[kind] = record.entities[kind].map((entity) => ({
      ...entity,
      fields: turnedField(entity.fields, RAIL_FIELDS[kind]),
    }));
  }
  const names = new Set(record.entities.station.map(({ fields }) => String(fields.name ?? '?')));
  entities.rail = entities.rail.map(({ fields, ...rail }) => ({
    ...rail,
    fields:
      typeof fields.where === 'string' ? { ...fields, where: turnedWhere(fields.where, names) } : fields,
  }));
  return {
    ...record,
    fields: turnedField(record.fields, 'alignment'),
    entities,
    readings: record.readings.map(turn),
  };
}

function marksWithBothEnds(record: CaseRecord): ReadonlySet<string> {
  const starts = new Set<string>();
  const ends = new Set<string>();
  for (const { subject, quantity } of currentReadings(record)) {
    if (subject.kind !== 'mark') continue;
    if (quantity === 'markStart') starts.add(subject.id);
    if (quantity === 'markEnd') ends.add(subject.id);
  }
  return new Set([...starts].filter((id) => ends.has(id)));
}
