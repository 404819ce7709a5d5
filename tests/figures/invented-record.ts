import type { CaseRecord, Disturbance, Entity, EntityKind, Reading } from '~/lib/case/record';
import { CASE_RECORD_VERSION, ENTITY_KINDS } from '~/lib/case/record';
import type { SubjectKind } from '~/lib/readings/quantity';

const AT = '2024-05-01T12:00:00Z';
const inch = 25.4;
const foot = 0.3048;

export type RecordBuilder = {
  readonly entity: (kind: EntityKind, fields: Entity['fields']) => string;
  readonly reading: (
    kind: SubjectKind,
    id: string,
    quantity: string,
    value: number,
    more?: { slot?: string; disturbance?: Disturbance },
  ) => void;
  readonly build: (fields?: Entity['fields']) => CaseRecord;
};

export function recordBuilder(): RecordBuilder {
  const entities = Object.fromEntries(ENTITY_KINDS.map((kind) => [kind, [] as Entity[]])) as Record<
    EntityKind,
    Entity[]
  >;
  const readings: Reading[] = [];
  return {
    entity: (kind, fields) => {
      const id = `${kind}-${entities[kind].length + 1}`;
      entities[kind].push({ id, order: entities[kind].length, fields, removed: null, createdAt: AT });
      return id;
    },
    reading: (kind, id, quantity, value, { slot = '', disturbance = 'notSaid' } = {}) => {
      readings.push({
        id: `r${readings.length + 1}`,
        subject: { kind, id },
        quantity,
        slot,
        entered: String(value),
        unit: '',
        value,
        state: null,
        examined: null,
        instrumentId: null,
        personId: null,
        takenAt: null,
        disturbance,
        sampling: 'notSaid',
        note: '',
        replaces: null,
        reason: null,
        withdrawn: false,
        createdAt: AT,
      });
    },
    build: (fields = {}) => ({
      version: CASE_RECORD_VERSION,
      id: 'case-1',
      fields: { units: 'us', ruleSet: 'us-49cfr213', trackClass: '3', alignment: 'curveLeft', ...fields },
      entities,
      readings,
      photos: [],
      recorderRuns: [],
      traces: [],
      ownShapes: [],
      narrative: { summary: '', determination: '', signatories: '' },
      standings: [],
      judgementChanges: [],
      createdAt: AT,
    }),
  };
}

/** An invented curve with a kink before the POD, one station not read, the last ones disturbed. */
export function curveRecord(stations = 44, fields: Entity['fields'] = {}): CaseRecord {
  const { entity, reading, build } = recordBuilder();
  const before = Math.round(stations * 0.75);
  for (let i = -before; i < stations - before; i += 1) {
    const disturbance: Disturbance = i > 2 ? 'disturbed' : 'undisturbed';
    const id = entity('station', { name: String(i), disturbance });
    reading('station', id, 'stationPosition', i * 15.5 * foot);
    if (i === -9) continue;
    const body = Math.min(1, Math.max(0, (i + before - 4) / 8));
    const wave = Math.sin(i * 1.3) * 0.15;
    reading(
      'station',
      id,
      'gauge',
      (56.5 + 0.5 * body + Math.abs(wave) + (i > -5 && i < 2 ? 0.55 : 0)) * inch,
    );
    reading('station', id, 'crosslevel', (3.5 * body + wave * 3) * inch);
    reading('station', id, 'midOrdinate62', (8 * body + wave * 3 + (i === -2 ? 2.1 : 0)) * inch);
    reading('station', id, 'profile62', (0.3 + wave * 2) * inch, { slot: 'left' });
    reading('station', id, 'profile62', (0.2 - wave) * inch, { slot: 'right' });
    if (i > -14) {
      reading('station', id, 'lateralMovement', 0.25 * inch, { slot: 'right' });
      reading('station', id, 'lateralMovement', 0.125 * inch, { slot: 'left' });
      reading('station', id, 'defectiveTies', Math.max(0, Math.round(4 + 3 * Math.sin(i))));
      reading('station', id, 'fasteningsLoose', Math.max(0, Math.round(6 + 5 * Math.cos(i))), {
        slot: 'right',
      });
    }
  }
  const mark = (
    type: string,
    rail: string,
    start: number,
    end: number,
    offsets: readonly [number, number],
    isPod = false,
    appearance = 'fresh',
  ): void => {
    const id = entity('mark', { type, rail, isPod, appearance });
    reading('mark', id, 'markStart', start * foot);
    if (Number.isFinite(end)) reading('mark', id, 'markEnd', end * foot);
    reading('mark', id, 'markOffsetStart', offsets[0] * inch);
    reading('mark', id, 'markOffsetEnd', offsets[1] * inch);
  };
  mark('flangeOnHead', 'right', 0, 9.5, [0.25, 2.8], true);
  mark('dropFieldSide', 'right', 9.5, 12, [2.9, 5]);
  mark('dropGaugeSide', 'left', 9.8, NaN, [-3, -3]);
  mark('flangeOnTie', 'right', 12, 96, [6, 10]);
  mark('treadOnTie', 'left', 13, 90, [-8, -14]);
  mark('railEndBatter', 'left', 61, NaN, [0, 0], false, 'old');
  return build(fields);
}
