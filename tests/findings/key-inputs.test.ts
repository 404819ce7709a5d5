import { describe, expect, it } from 'vitest';
import { KEY_INPUTS } from '~/lib/findings/key-input';
import { keyInputs } from '~/lib/findings/key-inputs';
import { buildRecord, range, stationSheet, type RecordSpec } from './record-builder';

const inch = (n: number) => n * 25.4;
const degrees = (n: number) => (n * Math.PI) / 180;
const undisturbed = { disturbance: 'undisturbed' };
const of = (spec: RecordSpec) => keyInputs(buildRecord(spec), { seed: 1 });

describe('key inputs', () => {
  it('say nothing where nothing was measured', () => {
    const inputs = of({});
    for (const id of KEY_INPUTS) {
      expect(inputs[id].measured).toBeNull();
      expect(inputs[id].reference.low).toBeLessThanOrEqual(inputs[id].reference.high);
      expect(inputs[id].reference.source).not.toBe('');
    }
  });

  const wheelset = (fields: Readonly<Record<string, string | number | boolean>>) => ({
    vehicle: [{ id: 'v1', fields: { position: 7, mark: 'ABC', number: '1', type: 'coveredHopper' } }],
    wheelset: [
      {
        id: 'w1',
        fields: { vehicle: 'v1', axle: 1, firstDerailed: true, ...undisturbed, ...fields },
        readings: [
          { quantity: 'flangeAngle', slot: 'left', entered: '75' },
          { quantity: 'flangeAngle', slot: 'right', entered: '66' },
          { quantity: 'rimWidth', slot: 'left', entered: '5 11/16' },
          { quantity: 'backToBack', slot: '0', entered: '53 1/16' },
          { quantity: 'backToBack', slot: '120', entered: '53 1/16' },
          { quantity: 'backToBack', slot: '240', entered: '53 1/16' },
        ],
      },
    ],
  });

  it('take the flanging wheel from the outer side of the curve and the far wheel opposite', () => {
    const inputs = of({ fields: { alignment: 'curveRight' }, ...wheelset({}) });
    expect(inputs.flangeAngle.measured?.value).toBeCloseTo(degrees(75), 9);
    expect(inputs.flangeAngle.measured?.readings).toEqual(['w1.flangeAngle.left']);
    expect(inputs.rimWidth.measured).toBeNull();
    expect(of({ fields: { alignment: 'curveLeft' }, ...wheelset({}) }).rimWidth.measured?.value).toBeCloseTo(
      inch(5.6875),
      9,
    );
  });

  it('take it from the first mark on tangent, and the less favourable when nothing tells', () => {
    const mark = {
      mark: [{ id: 'm', fields: { type: 'flangeOnHead', rail: 'left', isPod: true } }],
    };
    const marked = of({ fields: { alignment: 'tangent' }, ...mark, ...wheelset({}) });
    expect(marked.flangeAngle.measured?.value).toBeCloseTo(degrees(75), 9);
    const unknown = of({ ...wheelset({}) }).flangeAngle.measured;
    expect(unknown?.value).toBeCloseTo(degrees(66), 9);
    expect(unknown?.remark).toContain('less favourable');
  });

  it('leave out a disturbed wheelset', () => {
    const inputs = of({ fields: { alignment: 'curveLeft' }, ...wheelset({ disturbance: 'disturbed' }) });
    expect(inputs.flangeAngle.measured).toBeNull();
    expect(inputs.backToBackMin.measured).toBeNull();
  });

  it('take gauge and movement within 62 ft before the POD', () => {
    const inputs = of({
      fields: { alignment: 'curveLeft' },
      station: stationSheet(range(-8, 2), {
        gauge: (step) => (step === -7 || step === 2 ? '58' : step === -3 ? '57 3/16' : '56 9/16'),
        'lateralMovement.left': (step) => (step === -3 ? '3/16' : null),
        'lateralMovement.right': (step) => (step === -3 ? '5/16' : step === -1 ? '15/16' : null),
      }),
    });
    expect(inputs.gaugeStanding.measured?.value).toBeCloseTo(inch(57.1875), 9);
    expect(inputs.lateralMovement.measured?.value).toBeCloseTo(inch(0.5), 9);
    expect(inputs.lateralMovement.measured?.remark).toContain('same station');
  });

  it('take the rail nearest the POD', () => {
    const inputs = of({
      fields: { alignment: 'curveLeft' },
      rail: [
        {
          id: 'far',
          fields: { rail: 'right', where: '200 ft before', section: '136RE', ...undisturbed },
          readings: [{ quantity: 'gaugeFaceAngle', entered: '80' }],
        },
        {
          id: 'near',
          fields: { rail: 'right', where: '-31 ft', section: '136RE', ...undisturbed },
          readings: [{ quantity: 'gaugeFaceAngle', entered: '68' }],
        },
        {
          id: 'other',
          fields: { rail: 'left', where: 'POD', section: '136RE', ...undisturbed },
          readings: [{ quantity: 'gaugeFaceAngle', entered: '85' }],
        },
      ],
    });
    expect(inputs.gaugeFaceAngle.measured?.readings).toEqual(['near.gaugeFaceAngle']);
    expect(inputs.gaugeFaceAngle.measured?.remark).toContain('right rail −31.0 ft');
  });
});
