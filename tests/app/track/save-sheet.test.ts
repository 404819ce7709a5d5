import { describe, expect, it } from 'vitest';
import { sheetRows } from '~/app/track/rows.server';
import { saveSheet } from '~/app/track/save-sheet.server';
import { SHEET_COLUMNS } from '~/app/track/columns';
import { caseHead, readCase } from '~/db/cases';
import { addEntity } from '~/db/entities';
import { readLog, verifyLog } from '~/db/log';
import { currentReadings, standing } from '~/lib/case/current';
import { ACTOR, openWithCase } from '../../db/opened';

function opened() {
  const { db, caseId } = openWithCase();
  const load = () => ({ db, caseId, record: readCase(db, caseId)!, head: caseHead(db, caseId)! });
  return { db, caseId, load };
}

function formOf(boxes: Readonly<Record<string, string>>): FormData {
  const form = new FormData();
  for (const [name, value] of Object.entries(boxes)) form.set(name, value);
  return form;
}

const cellOf = (row: { readonly cells: readonly string[] } | undefined, column: string): string =>
  row?.cells[SHEET_COLUMNS.findIndex(({ id }) => id === column)] ?? '';

describe('saving a sheet', () => {
  it('adds stations with their readings, by whom and with what was said', () => {
    const { db, caseId, load } = opened();
    const person = addEntity(db, caseId, 'person', { name: 'T. Walker', role: 'trackInspector' }, ACTOR);
    const board = addEntity(db, caseId, 'instrument', { name: 'Board 4', kind: 'levelBoard' }, ACTOR);
    const answer = saveSheet(
      formOf({
        'cell:n1:name': '-1',
        'cell:n1:stationPosition': '-15.5',
        'cell:n1:crosslevel': '1 3/8',
        'cell:n2:name': '0',
        'cell:n2:stationPosition': '0',
        'cell:n2:crosslevel': '1.5.2',
        person,
        takenAt: '2031-04-09T14:35',
        disturbance: 'undisturbed',
        sampling: 'every',
        'with:crosslevel': board,
      }),
      load(),
      ACTOR,
    );
    expect(answer.counts).toEqual({ stations: 2, readings: 3, changed: 0 });
    const { record } = load();
    const crosslevel = currentReadings(record).find(({ quantity }) => quantity === 'crosslevel');
    expect(crosslevel).toMatchObject({
      value: 1.375 * 25.4,
      personId: person,
      instrumentId: board,
      takenAt: '2031-04-09T14:35',
      disturbance: 'undisturbed',
      sampling: 'every',
    });
    const zero = standing(record, 'station').find(({ fields }) => fields.name === '0')!;
    const cell = `cell:${zero.id}:crosslevel`;
    expect(Object.keys(answer.errors)).toEqual([cell]);
    expect(answer.values[cell]).toBe('1.5.2');
    expect(answer.marked).toEqual([zero.id]);
    expect(sheetRows(load()).map(({ name }) => name)).toEqual(['-1', '0']);
  });

  it('keeps who and when of a slip, and takes them anew of a reading taken again', () => {
    const { db, caseId, load } = opened();
    const first = addEntity(db, caseId, 'person', { name: 'A. First', role: 'trackInspector' }, ACTOR);
    const second = addEntity(db, caseId, 'person', { name: 'B. Second', role: 'trackInspector' }, ACTOR);
    saveSheet(formOf({ 'cell:n1:name': '3', 'cell:n1:gauge': '56 1/2', person: first }), load(), ACTOR);
    const station = standing(load().record, 'station')[0]!.id;
    const change = (gauge: string, how: string) =>
      saveSheet(
        formOf({
          [`cell:${station}:gauge`]: gauge,
          asOf: String(load().record.readings.length),
          person: second,
          reason: 'checked against the photo',
          change: how,
        }),
        load(),
        ACTOR,
      );
    expect(change('56 5/8', 'slip').counts.changed).toBe(1);
    expect(currentReadings(load().record)).toMatchObject([{ entered: '56 5/8', personId: first }]);
    expect(change('56 3/4', 'again').counts.changed).toBe(1);
    expect(currentReadings(load().record)).toMatchObject([
      { entered: '56 3/4', personId: second, reason: 'checked against the photo' },
    ]);
    expect(change('', 'slip').counts.changed).toBe(1);
    expect(currentReadings(load().record)).toEqual([]);
    expect(load().record.readings).toHaveLength(4);
    expect(verifyLog(db, caseId)).toMatchObject({ ok: true });
    expect(readLog(db, caseId, { limit: 10 }).map(({ action }) => action)).toContain('withdraw');
  });

  it('keeps a changed cell in its box and asks for the reason', () => {
    const { load } = opened();
    saveSheet(formOf({ 'cell:n1:name': '3', 'cell:n1:gauge': '56 1/2' }), load(), ACTOR);
    const row = sheetRows(load())[0]!;
    const answer = saveSheet(
      formOf({
        [`cell:${row.id}:gauge`]: '57',
        [`cell:${row.id}:crosslevel`]: '1',
        asOf: String(load().record.readings.length),
      }),
      load(),
      ACTOR,
    );
    expect(answer.counts).toEqual({ stations: 0, readings: 1, changed: 0 });
    expect(answer.errors.reason).toContain('Say why');
    expect(answer.values[`cell:${row.id}:gauge`]).toBe('57');
    expect(cellOf(sheetRows(load())[0], 'gauge')).toBe('56 1/2');
  });

  it('saves nothing while the time cannot be read, and gives everything back', () => {
    const { load } = opened();
    const answer = saveSheet(formOf({ 'cell:n1:name': '3', takenAt: 'yesterday' }), load(), ACTOR);
    expect(answer.errors).toHaveProperty('takenAt');
    expect(answer.values).toMatchObject({ 'cell:n1:name': '3', takenAt: 'yesterday' });
    expect(standing(load().record, 'station')).toEqual([]);
  });
});
