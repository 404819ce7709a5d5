import { describe, expect, it } from 'vitest';
import type { CaseRecord, Reading } from '~/lib/case/record';
import type { Trace } from '~/lib/case/trace';
import { assess } from '~/lib/explanations/assess';
import { keyInputs } from '~/lib/findings/key-inputs';
import { tracedRecord } from '../report/traced-record';
import { found as byId } from './by-id';

const OPTIONS = { seed: 1 };
const THICKNESS = 'flangeThickness:wheelset-1:right';

/** The case with the flange thickness of its right wheel read as well, to the half width of a unit's last digit. */
function withReading(entered: string, unit: string, value: number): CaseRecord {
  const record = tracedRecord('us');
  const [like] = record.readings;
  if (!like) throw new Error('There is no reading.');
  const subject = { kind: 'wheelset' as const, id: 'wheelset-1' };
  const reading: Reading = {
    ...like,
    id: 'read-thickness',
    subject,
    quantity: 'flangeThickness',
    slot: 'right',
    entered,
    unit,
    value,
  };
  return { ...record, readings: [...record.readings, reading] };
}

const traced = (change: (trace: Trace) => Trace): CaseRecord => {
  const record = tracedRecord('us');
  return { ...record, traces: record.traces.map(change) };
};

describe('readings and outlines of the same thing', () => {
  it('takes the outline where it is known better, and says what was read', () => {
    const taken = byId(withReading('1 3/16', 'in', 30.1625), OPTIONS).measured(THICKNESS);
    expect(taken.readings).toEqual(['c-right']);
    expect(taken.method.id).toBe('wheel-trace-features');
    expect(taken.remarks.join(' ')).toContain('traced 8 April 2031, file c-right.csv');
    expect(taken.remarks.join(' ')).toContain('Both traced and read');
    expect(taken.remarks.join(' ')).not.toContain('find out which of them errs');
  });

  it('says when the two differ by more than both allow', () => {
    const taken = byId(withReading('1', 'in', 25.4), OPTIONS).measured(THICKNESS);
    expect(taken.remarks.join(' ')).toContain('find out which of them errs');
  });

  it('takes the reading where the outline is known worse', () => {
    const vague = traced((trace) =>
      trace.id === 'c-right' ? { ...trace, uncertainty: { ...trace.uncertainty, scale: 0.08 } } : trace,
    );
    const record = { ...vague, readings: withReading('1 3/8', 'in', 34.925).readings };
    const taken = byId(record, OPTIONS).measured(THICKNESS);
    expect(taken.value).toBe(34.925);
    expect(taken.readings).toEqual(['read-thickness']);
    expect(taken.method.id).toBe('as-read');
  });

  it('never takes a disturbed outline, and falls back on an earlier one that was not', () => {
    const spoiled = traced((trace) =>
      trace.id === 'b-left' || trace.id === 'c-right' ? { ...trace, disturbance: 'disturbed' } : trace,
    );
    const at = byId(spoiled, OPTIONS);
    const left = at.measured('flangeThickness:wheelset-1:left');
    expect(left.readings).toEqual(['a-earlier']);
    expect(left.remarks.join(' ')).toContain('disturbed by the derailment');
    const right = at.get(THICKNESS);
    expect(right.kind === 'notMeasured' && right.missing.join(' ')).toContain('disturbed by the derailment');
    expect(at.get('climbContactAngle').kind).toBe('notMeasured');
  });
});

describe('key inputs from outlines', () => {
  const inputs = keyInputs(tracedRecord('us'), OPTIONS);

  it('take the contact angle in place of the gauge face, erring with the flange of the same outline', () => {
    const angle = inputs.gaugeFaceAngle.measured;
    expect(angle?.readings).toEqual(['c-right', 'e-right-rail']);
    expect(angle?.errsWith).toBe('flangeAngle');
    expect(inputs.flangeAngle.measured?.readings).toEqual(['c-right']);
  });

  it('take the ride on the field side from the wheel and rail opposite the flanging ones', () => {
    const ride = inputs.fieldSideRide.measured;
    expect(ride?.readings).toEqual(['b-left', 'd-left-rail']);
    expect(ride?.value).toBeGreaterThanOrEqual(0);
    expect(ride?.value).toBeLessThanOrEqual(1);
  });

  it('judge it from the hollow without both outlines: 3.2 mm rides two fifths', () => {
    const record = tracedRecord('us');
    const alone = keyInputs(
      { ...record, traces: record.traces.filter(({ id }) => id !== 'd-left-rail') },
      OPTIONS,
    );
    const hollow = alone.treadHollow.measured;
    if (!hollow) throw new Error('There is no hollow.');
    expect(alone.fieldSideRide.measured?.readings).toEqual(['b-left']);
    expect(alone.fieldSideRide.measured?.value).toBeCloseTo((hollow.value - 2) / 3, 9);
    expect(alone.fieldSideRide.measured?.u).toBeCloseTo(hollow.u / 3, 9);
  });

  it('let the argument leave each outline out in turn', () => {
    const { argument } = assess({ record: tracedRecord('us'), seed: 1 });
    const left = argument.whatWouldChange.readingsLeftOut.filter(({ refs }) =>
      refs.some(({ kind }) => kind === 'trace'),
    );
    expect(left.map(({ id }) => id).sort()).toEqual(['b-left', 'c-right', 'd-left-rail', 'e-right-rail']);
    expect(left.find(({ id }) => id === 'c-right')?.what).toContain('Outline, right wheel');
  });
});
