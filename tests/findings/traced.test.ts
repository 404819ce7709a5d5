import { describe, expect, it } from 'vitest';
import { findings } from '~/lib/findings';
import { wornFeatures } from '~/lib/findings/wheels/wear';
import { buildContext } from '~/lib/findings/context';
import { standing } from '~/lib/case/current';
import { tracedRecord } from '../report/traced-record';
import { found as byId } from './by-id';

const OPTIONS = { seed: 1 };
const at = byId(tracedRecord('us'), OPTIONS);
const degrees = (rad: number): number => (rad * 180) / Math.PI;

describe('what traced outlines give the findings', () => {
  it('takes the contact angle of the climb limit from the two outlines, and says which', () => {
    const angle = at.measured('climbContactAngle');
    // A 75° flange on a face worn to 84°: the flange governs.
    expect(degrees(angle.value)).toBeGreaterThan(73);
    expect(degrees(angle.value)).toBeLessThan(77);
    expect(angle.readings).toContain('c-right');
    expect(angle.readings).toContain('e-right-rail');
    const dry = at.measured('climbLimitAtDryFriction');
    expect(dry.readings).toEqual(angle.readings);
    expect(dry.remarks.join(' ')).toContain('of the outlines of wheel and rail on each other');
  });

  it('gives clearance, conicity and the loaded side of each rail, with what was stood on what', () => {
    const clearance = at.measured('flangeClearance');
    expect(clearance.value).toBeGreaterThan(5);
    expect(clearance.value).toBeLessThan(60);
    expect(clearance.u).toBeGreaterThan(0);
    for (const id of ['b-left', 'c-right', 'd-left-rail', 'e-right-rail'])
      expect(clearance.readings).toContain(id);
    for (const side of ['left', 'right']) {
      const share = at.measured(`fieldSideShare:${side}`).value;
      expect(share).toBeGreaterThanOrEqual(0);
      expect(share).toBeLessThanOrEqual(1);
    }
  });

  it('takes where the heads are loaded into the rollover limit while no running band is recorded', () => {
    const record = tracedRecord('us');
    const [rail] = record.entities.rail.filter(({ fields }) => fields.rail === 'right');
    if (!rail) throw new Error('There is no right rail.');
    const [reading] = record.readings;
    if (!reading) throw new Error('There is no reading.');
    const cant = {
      ...reading,
      id: 'cant-right',
      subject: { kind: 'rail' as const, id: rail.id },
      quantity: 'railCant',
      slot: '',
      entered: '0.5',
      unit: '°',
      value: 0.0087,
    };
    const limit = byId({ ...record, readings: [...record.readings, cant] }, OPTIONS).measured(
      'rolloverFlangingRail',
    );
    expect(limit.remarks.join(' ')).toContain('where the outlines of wheel and rail touch');
    expect(limit.readings).toContain('e-right-rail');
  });

  it('says what is missing for a stand when a rail was not traced', () => {
    const record = tracedRecord('us');
    const some = byId({ ...record, traces: record.traces.filter(({ id }) => id !== 'd-left-rail') }, OPTIONS);
    const clearance = some.get('flangeClearance');
    expect(clearance.kind).toBe('notMeasured');
    expect(clearance.kind === 'notMeasured' && clearance.missing.join(' ')).toContain('left rail');
  });

  it('lists what only an outline shows, from the latest outline of the wheel', () => {
    const qR = at.measured('qR:wheelset-1:left');
    expect(qR.readings).toEqual(['b-left']);
    expect(at.measured('headWidth:rail-left').value).toBeGreaterThan(60);
  });

  it('finds the wear of the wheel that was traced twice, and of no other', () => {
    const context = buildContext(tracedRecord('us'), OPTIONS);
    const [wheelset] = standing(context.record, 'wheelset');
    if (!wheelset) throw new Error('There is no wheelset.');
    const worn = wornFeatures(context, wheelset);
    expect(new Set(worn.map(({ side }) => side))).toEqual(new Set(['left']));
    const hollow = at.measured('wearRate:wheelset-1:left.treadHollow');
    expect(hollow.readings).toEqual(['a-earlier', 'b-left']);
    expect(hollow.value).toBeGreaterThan(0);
    // Two outlines 130,000 km apart: rate × distance is the difference of the two hollows.
    const line = worn.find(({ feature }) => feature.id === 'treadHollow')?.history;
    const [early, late] = line?.points ?? [];
    if (!line || !early || !late) throw new Error('There is no history.');
    expect(hollow.value).toBeCloseTo((late.valueMm - early.valueMm) / (130_000 / 160_934.4), 6);
    expect(hollow.remarks.join(' ')).toContain('From 2 outlines or readings');
  });

  it('is the same for the same record and seed', () => {
    expect(findings(tracedRecord('us'), OPTIONS)).toEqual(findings(tracedRecord('us'), OPTIONS));
  });
});
