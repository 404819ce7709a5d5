import { describe, expect, it } from 'vitest';
import { found } from './by-id';
import { buildRecord, type EntitySpec, type ReadingSpec } from './record-builder';

const inch = (n: number) => n * 25.4;
const U_PIN = inch(1 / 16) / Math.sqrt(3);
const U_RULE = inch(1 / 32) / Math.sqrt(3);
const undisturbed = { disturbance: 'undisturbed' };

function axle(
  type: string,
  readings: readonly ReadingSpec[],
  more: Partial<Parameters<typeof buildRecord>[0]> = {},
) {
  return found(
    buildRecord({
      fields: { alignment: 'curveLeft', trackClass: '2' },
      vehicle: [{ id: 'v1', fields: { position: 1, mark: 'ABC', number: '12', type, firstDerailed: true } }],
      wheelset: [{ id: 'w1', fields: { vehicle: 'v1', axle: 1, ...undisturbed }, readings }],
      ...more,
    }),
  );
}

describe('wheel limits', () => {
  const thin: ReadingSpec = { quantity: 'flangeThickness', slot: 'right', entered: '7/8' };

  it('hold a freight car to 49 CFR 215.103: 7/8 in or less is condemned', () => {
    const flange = axle('coveredHopper', [{ ...thin, entered: '14/16' }]).measured(
      'flangeThickness:w1:right',
    );
    expect(flange.value).toBeCloseTo(inch(0.875), 9);
    expect(flange.u).toBeCloseTo(U_PIN, 9);
    expect(flange.title).toContain('axle 1');
    expect(flange.limits).toHaveLength(1);
    expect(flange.limits[0]).toMatchObject({ citation: '49 CFR 215.103(a)', exceeded: true });
    expect(flange.limits[0]?.probabilityExceeds).toBeCloseTo(0.5, 6);
  });

  it('hold a locomotive to 49 CFR 229.75', () => {
    const at = axle('locomotive', [thin, { quantity: 'treadHollow', slot: 'left', entered: '3/16' }]);
    expect(at.measured('flangeThickness:w1:right').limits[0]?.citation).toBe('49 CFR 229.75(f)');
    expect(at.measured('treadHollow:w1:left').limits[0]).toMatchObject({
      citation: '49 CFR 229.75(g)',
      exceeded: false,
    });
  });

  it('say so when no limits cover the vehicle', () => {
    const flange = axle('passenger', [thin]).measured('flangeThickness:w1:right');
    expect(flange.limits).toHaveLength(0);
    expect(flange.remarks.join(' ')).toContain('no limits for this type of vehicle');
  });

  it('leave a disturbed wheel out and say why', () => {
    const at = axle('coveredHopper', [{ ...thin, disturbance: 'disturbed' }]);
    expect(at.get('flangeThickness:w1:right')).toMatchObject({
      kind: 'notMeasured',
      missing: ['flange thickness undisturbed; read only disturbed by the derailment'],
    });
  });

  it('note the worst of many', () => {
    const at = axle('coveredHopper', [{ ...thin, sampling: 'worst' }]);
    expect(at.measured('flangeThickness:w1:right').remarks).toContain(
      'Read as the worst that was found, not as one of many.',
    );
  });
});

describe('go/no-go', () => {
  it('is pass or fail of the named check and no number', () => {
    const at = axle('coveredHopper', [
      { quantity: 'flangeThicknessCheck', slot: 'left', state: 'fail' },
      { quantity: 'rimThicknessCheck', slot: 'left', state: 'pass' },
    ]);
    expect(at.get('flangeThicknessCheck:w1:left')).toMatchObject({
      kind: 'passFail',
      pass: false,
      check: 'The flange is thicker than the condemning thickness of the gauge used',
      readings: ['w1.flangeThicknessCheck.left'],
    });
    expect(at.get('rimThicknessCheck:w1:left')).toMatchObject({ kind: 'passFail', pass: true });
    expect(at.has('flangeThickness:w1:left')).toBe(false);
  });

  it('shows the fail of a pass and a fail', () => {
    const at = axle('coveredHopper', [
      { quantity: 'hollowCheck', slot: 'left', state: 'fail', id: 'a' },
      { quantity: 'hollowCheck', slot: 'left', state: 'pass', id: 'b' },
    ]);
    expect(at.get('hollowCheck:w1:left')).toMatchObject({ pass: false, readings: ['a', 'b'] });
    expect(at.get('hollowCheck:w1:left').remarks.join(' ')).toContain('differ');
  });
});

describe('back-to-back', () => {
  const clock = (values: Readonly<Record<string, string>>): readonly ReadingSpec[] =>
    Object.entries(values).map(([slot, entered]) => ({ quantity: 'backToBack', slot, entered }));

  it('gives mean, swing and smallest from three positions', () => {
    // 53 + (3, 0, 0)/16: mean 53 1/16; cosine part 2/3·(3 − 0)·… = 2/16, so the swing is 4/16.
    const at = axle('locomotive', clock({ '0': '53 3/16', '120': '53', '240': '53' }));
    expect(at.measured('backToBackMean:w1').value).toBeCloseTo(inch(53 + 1 / 16), 9);
    expect(at.measured('backToBackMean:w1').u).toBeCloseTo(U_RULE / Math.sqrt(3), 9);
    const swing = at.measured('backToBackSwing:w1');
    expect(swing.value).toBeCloseTo(inch(4 / 16), 9);
    expect(swing.u).toBeCloseTo(2 * U_RULE * Math.sqrt(2 / 3), 9);
    expect(swing.limits[0]?.citation).toBe('49 CFR 229.73(d)');
    expect(swing.remarks.join(' ')).toContain('Three positions always fit');
    expect(at.measured('backToBackLeast:w1').value).toBeCloseTo(inch(53 + 1 / 16 - 2 / 16), 9);
  });

  it('gives the mean alone from fewer, saying so', () => {
    const at = axle('coveredHopper', clock({ '0': '53 3/16', '180': '53 1/16' }));
    expect(at.measured('backToBackMean:w1').value).toBeCloseTo(inch(53.125), 9);
    expect(at.measured('backToBackMean:w1').remarks.join(' ')).toContain('2 places only');
    expect(at.get('backToBackSwing:w1').kind).toBe('notMeasured');
    expect(at.measured('backToBackLeast:w1').readings).toEqual(['w1.backToBack.180']);
  });
});

describe('diameter from a chord', () => {
  it('is 36 in for 1.02944 in on 12 in, with its uncertainty', () => {
    const at = axle('coveredHopper', [
      { quantity: 'chordLength', slot: 'left', entered: '12.000' },
      { quantity: 'chordHeight', slot: 'left', entered: '1.0294' },
      { quantity: 'chordLength', slot: 'right', entered: '12.000' },
      { quantity: 'chordHeight', slot: 'right', entered: '1.0304' },
    ]);
    const left = at.measured('wheelDiameter:w1:left');
    expect(left.value / 25.4).toBeCloseTo(36.0, 1);
    // dD/dh = 1 − c²/(4h²) = −32.97, dD/dc = c/(2h) = 5.83; resolutions 0.0005 and 0.005 in over √3.
    expect(left.u / 25.4).toBeCloseTo(Math.hypot(32.97 * 0.0005, 5.829 * 0.005) / Math.sqrt(3), 3);
    expect(at.measured('diameterDifference:w1').value / 25.4).toBeCloseTo(0.033, 3);
    expect(at.measured('diameterDifference:w1').remarks).toContain(
      'No larger than the readings could give by themselves.',
    );
  });
});

describe('wheel defects', () => {
  const defect = (type: string, appearance: string, length: string): readonly EntitySpec[] => [
    {
      id: 'd1',
      fields: { wheelset: 'w1', side: 'left', type, appearance },
      readings: [{ quantity: 'defectLength', entered: length }],
    },
  ];

  it('are held against the limit for the vehicle: exactly 2 1/2 in passes a freight car, not a locomotive', () => {
    const on = (type: string) =>
      axle(type, [], { wheelDefect: defect('slidFlat', 'old', '2 1/2') }).measured('defectLength:d1')
        .limits[0];
    expect(on('boxcar')).toMatchObject({ citation: '49 CFR 215.103(f)(1)', exceeded: false });
    expect(on('locomotive')).toMatchObject({ citation: '49 CFR 229.75(a)', exceeded: true });
  });

  it('with fresh metal may be damage from the derailment and feed nothing', () => {
    const at = axle('boxcar', [], { wheelDefect: defect('shelled', 'fresh', '3') });
    const size = at.get('defectLength:d1');
    expect(size.kind).toBe('notMeasured');
    expect(JSON.stringify(size)).toContain('may be damage');
  });
});

describe('side bearings', () => {
  it('are added across the end and diagonally', () => {
    const truck = (id: string, end: string, left: string, right: string): EntitySpec => ({
      id,
      fields: { vehicle: 'v1', end, ...undisturbed },
      readings: [
        { quantity: 'sideBearingClearance', slot: 'left', entered: left },
        { quantity: 'sideBearingClearance', slot: 'right', entered: right },
      ],
    });
    const at = axle('coveredHopper', [], {
      truck: [truck('t1', 'leading', '1/16', '15/16'), truck('t2', 'trailing', '5/16', '5/16')],
    });
    const end = at.measured('sideBearingClearanceEnd:t1');
    expect(end.value).toBeCloseTo(inch(1), 9);
    expect(end.limits[0]).toMatchObject({ citation: '49 CFR 215.119(c)(3)', exceeded: true });
    expect(at.measured('sideBearingClearanceDiagonal:v1:left').value).toBeCloseTo(inch(6 / 16), 9);
    expect(at.measured('sideBearingClearanceDiagonal:v1:right').value).toBeCloseTo(inch(20 / 16), 9);
  });
});
