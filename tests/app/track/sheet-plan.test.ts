import { describe, expect, it } from 'vitest';
import { planSheet, type SentRow, type SentSheet } from '~/app/track/sheet-plan';
import { addEntity, removeEntity } from '~/db/entities';
import { readCase } from '~/db/cases';
import { addReadings, correctReading } from '~/db/readings';
import type { CaseRecord } from '~/lib/case/record';
import { ACTOR, newReading, openWithCase } from '../../db/opened';

function sheetWith() {
  const { db, caseId } = openWithCase();
  const station = addEntity(db, caseId, 'station', { name: '-1', disturbance: 'undisturbed' }, ACTOR);
  const subject = { kind: 'station', id: station } as const;
  const [position, gauge] = addReadings(
    db,
    caseId,
    [
      newReading(subject, { quantity: 'stationPosition', entered: '-15.5', unit: 'ft', value: -4.7244 }),
      newReading(subject, { quantity: 'gauge', entered: '56 3/4', unit: 'in', value: 1441.45 }),
    ],
    ACTOR,
  );
  const record = (): CaseRecord => readCase(db, caseId)!;
  const sent = (cells: Record<string, string>, given: Partial<SentSheet> = {}): SentSheet => ({
    rows: [{ row: station, cells }],
    asOf: record().readings.length,
    was: { [station]: { name: '-1', disturbance: 'Undisturbed', joint: '', note: '' } },
    reason: '',
    newState: 'notSaid',
    ...given,
  });
  return { db, caseId, station, record, sent, position: position!, gauge: gauge! };
}

const same = { name: '-1', disturbance: 'Undisturbed', stationPosition: '-15.5', gauge: '56 3/4' };

const isNothing = (plan: ReturnType<typeof planSheet>): boolean =>
  [plan.added, plan.fields, plan.readings, plan.corrections, plan.withdrawals, plan.waiting].every(
    (list) => list.length === 0,
  );

describe('planning a sheet', () => {
  it('does nothing when nothing was changed', () => {
    const { record, sent } = sheetWith();
    const plan = planSheet(record(), sent(same, { reason: 'none needed' }), 'us');
    expect(plan.errors).toEqual({});
    expect(isNothing(plan)).toBe(true);
  });

  it('takes a filled empty cell as a new reading, without asking for a reason', () => {
    const { record, sent, station } = sheetWith();
    const plan = planSheet(
      record(),
      sent({ ...same, crosslevel: '2 1/4', 'lateralMovement.left': '3 mm' }),
      'us',
    );
    expect(plan.readings).toEqual([
      expect.objectContaining({
        stationId: station,
        quantity: 'crosslevel',
        slot: '',
        entered: '2 1/4',
        value: 57.15,
      }),
      expect.objectContaining({ quantity: 'lateralMovement', slot: 'left', unit: 'mm', value: 3 }),
    ]);
    expect(plan.readings.every(({ disturbance }) => disturbance === 'undisturbed')).toBe(true);
    expect(plan.errors).toEqual({});
  });

  it('lets a changed and an emptied cell wait until there is a reason', () => {
    const { record, sent, station, gauge, position } = sheetWith();
    const cells = { ...same, gauge: '57', stationPosition: '' };
    const without = planSheet(record(), sent(cells), 'us');
    expect(without.waiting).toEqual([`cell:${station}:stationPosition`, `cell:${station}:gauge`]);
    expect(without.corrections).toEqual([]);
    const withReason = planSheet(record(), sent(cells, { reason: 'misread' }), 'us');
    expect(withReason.corrections.map(({ old, to }) => [old.id, to.entered, to.value])).toEqual([
      [gauge, '57', 57 * 25.4],
    ]);
    expect(withReason.withdrawals.map(({ id }) => id)).toEqual([position]);
  });

  it('marks a changed cell that cannot be read at once, reason or not', () => {
    const { record, sent, station } = sheetWith();
    const plan = planSheet(record(), sent({ ...same, gauge: '57 1/0', stationPosition: '-14' }), 'us');
    expect(Object.keys(plan.errors)).toEqual([`cell:${station}:gauge`]);
    expect(plan.waiting).toEqual([`cell:${station}:stationPosition`]);
  });

  it('marks a cell that cannot be read and keeps the others', () => {
    const { record, sent, station } = sheetWith();
    const plan = planSheet(record(), sent({ ...same, crosslevel: '1/0', midOrdinate62: '8' }), 'us');
    expect(Object.keys(plan.errors)).toEqual([`cell:${station}:crosslevel`]);
    expect(plan.readings.map(({ quantity }) => quantity)).toEqual(['midOrdinate62']);
  });

  it('does not overwrite what somebody else corrected meanwhile', () => {
    const { db, caseId, record, sent, station, gauge } = sheetWith();
    const stale = sent({ ...same, gauge: '57' }, { reason: 'misread' });
    const old = record().readings.find(({ id }) => id === gauge)!;
    correctReading(db, caseId, gauge, { ...old, entered: '56 7/8', value: 1444.625 }, 'read again', ACTOR);
    const plan = planSheet(record(), stale, 'us');
    expect(isNothing(plan)).toBe(true);
    expect(plan.errors[`cell:${station}:gauge`]).toContain('56 7/8');
    const untouched = planSheet(record(), { ...stale, rows: [{ row: station, cells: same }] }, 'us');
    expect(untouched.errors).toEqual({});
    expect(isNothing(untouched)).toBe(true);
  });

  it('corrects the state of the readings with that of their station', () => {
    const { record, sent, station, gauge, position } = sheetWith();
    const cells = { ...same, disturbance: 'Disturbed by the derailment', gauge: '57' };
    expect(planSheet(record(), sent(cells), 'us').waiting).toContain(`cell:${station}:disturbance`);
    const plan = planSheet(record(), sent(cells, { reason: 'wheels ran over it' }), 'us');
    expect(plan.fields).toEqual([{ id: station, fields: { disturbance: 'disturbed' } }]);
    expect(plan.corrections.map(({ old, to }) => [old.id, to.disturbance, to.entered])).toEqual([
      [position, 'disturbed', '-15.5'],
      [gauge, 'disturbed', '57'],
    ]);
  });

  it('makes a station of a new row, with the shared state where its own cell is empty', () => {
    const { record, sent } = sheetWith();
    const rows: readonly SentRow[] = [
      { row: 'n1', cells: { name: '-2', stationPosition: '-31', gauge: 'wide' } },
      { row: 'n2', cells: { name: '', gauge: '' } },
      { row: 'n3', cells: { name: '', gauge: '57' } },
      { row: 'n4', cells: { name: '-1', gauge: '57' } },
      { row: 'n5', cells: { name: '-2', gauge: '57' } },
    ];
    const plan = planSheet(record(), sent({}, { rows, newState: 'undisturbed' }), 'us');
    expect(plan.added).toEqual([
      {
        row: 'n1',
        fields: { name: '-2', disturbance: 'undisturbed', joint: null, note: null },
        readings: [expect.objectContaining({ quantity: 'stationPosition', disturbance: 'undisturbed' })],
      },
    ]);
    expect(Object.keys(plan.errors).sort()).toEqual([
      'cell:n1:gauge',
      'cell:n3:name',
      'cell:n4:name',
      'cell:n5:name',
    ]);
  });

  it('says so when a station was removed meanwhile', () => {
    const { db, caseId, record, sent, station } = sheetWith();
    const stale = sent({ ...same, gauge: '57' }, { reason: 'misread' });
    removeEntity(db, caseId, 'station', station, 'entered twice', ACTOR);
    const plan = planSheet(record(), stale, 'us');
    expect(isNothing(plan)).toBe(true);
    expect(plan.errors[`cell:${station}:name`]).toContain('removed');
  });

  it('reads a cell that says its unit the same again in either system', () => {
    const { record, sent } = sheetWith();
    const inMetric = { ...same, gauge: '56 3/4 in', stationPosition: '-15.5 ft' };
    const plan = planSheet(record(), sent(inMetric), 'metric');
    expect(plan.errors).toEqual({});
    expect(isNothing(plan)).toBe(true);
  });
});
