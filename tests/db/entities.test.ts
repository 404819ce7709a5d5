import { describe, expect, it } from 'vitest';
import { caseHead, createCase, readCase } from '~/db/cases';
import { addEntities, addEntity, moveEntity, removeEntity, restoreEntity, updateEntity } from '~/db/entities';
import { readLog, verifyLog } from '~/db/log';
import { KINDS } from '~/lib/case/kinds';
import { parseFields } from '~/lib/case/fields';
import { ACTOR, CASE_FIELDS, openWithCase } from './opened';

const VEHICLE = { position: 4, mark: 'ABCX', number: '1234', type: 'coveredHopper' };

describe('records of a case', () => {
  it('keeps every field with its type', () => {
    const { db, caseId } = openWithCase();
    const parsed = parseFields(KINDS.vehicle, { ...VEHICLE, hazmat: 'no', derailed: 'on', lading: '' });
    if (!parsed.ok) throw new Error('fields');
    const id = addEntity(db, caseId, 'vehicle', parsed.fields, ACTOR);
    expect(readCase(db, caseId)?.entities.vehicle).toEqual([
      { id, order: 0, fields: parsed.fields, removed: null, createdAt: expect.any(String) },
    ]);
  });

  it('changes only what is given', () => {
    const { db, caseId } = openWithCase();
    const id = addEntity(db, caseId, 'vehicle', { ...VEHICLE, load: 'empty' }, ACTOR);
    updateEntity(db, caseId, 'vehicle', id, { derailed: true, mark: 'ABCX' }, ACTOR);
    expect(readCase(db, caseId)?.entities.vehicle[0]?.fields).toMatchObject({
      load: 'empty',
      derailed: true,
    });
    expect(readLog(db, caseId, { limit: 1 })[0]).toMatchObject({
      before: { derailed: null },
      after: { derailed: true },
    });
    const head = caseHead(db, caseId);
    updateEntity(db, caseId, 'vehicle', id, { derailed: true }, ACTOR);
    expect(caseHead(db, caseId)).toBe(head);
  });

  it('removes with a reason and restores; nothing leaves the file', () => {
    const { db, caseId } = openWithCase();
    const id = addEntity(db, caseId, 'vehicle', VEHICLE, ACTOR);
    expect(() => removeEntity(db, caseId, 'vehicle', id, '', ACTOR)).toThrow('CHECK');
    removeEntity(db, caseId, 'vehicle', id, 'entered twice', ACTOR);
    expect(readCase(db, caseId)?.entities.vehicle[0]?.removed).toMatchObject({ reason: 'entered twice' });
    restoreEntity(db, caseId, 'vehicle', id, ACTOR);
    expect(readCase(db, caseId)?.entities.vehicle[0]?.removed).toBeNull();
    expect(readLog(db, caseId, { limit: 9 }).map((entry) => entry.action)).toEqual([
      'restore',
      'remove',
      'add',
      'open',
    ]);
    expect(verifyLog(db, caseId).ok).toBe(true);
  });

  it('adds several or none', () => {
    const { db, caseId } = openWithCase();
    const head = caseHead(db, caseId);
    expect(() => addEntities(db, caseId, 'vehicle', [VEHICLE, { ...VEHICLE, number: null }], ACTOR)).toThrow(
      'NOT NULL',
    );
    expect(readCase(db, caseId)?.entities.vehicle).toEqual([]);
    expect(caseHead(db, caseId)).toBe(head);
    const ids = addEntities(db, caseId, 'vehicle', [VEHICLE, { ...VEHICLE, position: 5 }], ACTOR);
    expect(readCase(db, caseId)?.entities.vehicle.map((row) => row.id)).toEqual(ids);
    expect(ids).toEqual([...ids].sort());
    expect(addEntities(db, caseId, 'vehicle', [], ACTOR)).toEqual([]);
  });

  it('moves a record to another place', () => {
    const { db, caseId } = openWithCase();
    const names = ['a', 'b', 'c'].map((name) => ({ name, disturbance: 'undisturbed' }));
    const [a = '', b = '', c = ''] = addEntities(db, caseId, 'station', names, ACTOR);
    const order = () => readCase(db, caseId)?.entities.station.map((row) => row.fields.name);
    moveEntity(db, caseId, 'station', c, a, ACTOR);
    expect(order()).toEqual(['c', 'a', 'b']);
    moveEntity(db, caseId, 'station', a, null, ACTOR);
    expect(order()).toEqual(['c', 'b', 'a']);
    expect(() => moveEntity(db, caseId, 'station', b, 'none', ACTOR)).toThrow('No such station');
  });

  it('refers only to records of its own case', () => {
    const { db, caseId } = openWithCase();
    const other = createCase(db, { ...CASE_FIELDS, number: 'D-002' }, ACTOR);
    const vehicle = addEntity(db, other, 'vehicle', VEHICLE, ACTOR);
    const wheelset = { vehicle, axle: 1, disturbance: 'undisturbed' };
    expect(() => addEntity(db, caseId, 'wheelset', wheelset, ACTOR)).toThrow('FOREIGN KEY');
    expect(addEntity(db, other, 'wheelset', wheelset, ACTOR)).toBeTruthy();
    expect(() => updateEntity(db, caseId, 'vehicle', vehicle, { position: 1 }, ACTOR)).toThrow(
      'No such vehicle',
    );
  });
});
