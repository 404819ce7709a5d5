import { describe, expect, it } from 'vitest';
import { fromCanonical } from '~/lib/readings/convert';
import { found } from './by-id';
import { buildRecord, range, stationSheet, type ReadingSpec, type RecordSpec } from './record-builder';

const inch = (n: number) => n * 25.4;
const undisturbed = { disturbance: 'undisturbed' };

type Parts = {
  readonly wheel?: readonly ReadingSpec[];
  readonly outerRail?: readonly ReadingSpec[];
  readonly innerRail?: readonly ReadingSpec[];
  readonly more?: RecordSpec;
};

/** An empty covered hopper on a curve to the left: the right rail and the right wheel are outside. */
function hopper({ wheel = [], outerRail = [], innerRail = [], more = {} }: Parts) {
  return found(
    buildRecord({
      fields: { alignment: 'curveLeft', trackClass: '2' },
      vehicle: [
        {
          id: 'v1',
          fields: { position: 9, mark: 'ABC', number: '12', type: 'coveredHopper', firstDerailed: true },
          readings: [
            { quantity: 'grossWeight', entered: '63000 lb' },
            { quantity: 'axleCount', entered: '4' },
          ],
        },
      ],
      wheelset: [
        {
          id: 'w1',
          fields: { vehicle: 'v1', axle: 1, firstDerailed: true, ...undisturbed },
          readings: wheel,
        },
      ],
      rail: [
        {
          id: 'high',
          fields: { rail: 'right', where: '-15.5 ft', section: '136RE', ...undisturbed },
          readings: outerRail,
        },
        {
          id: 'low',
          fields: { rail: 'left', where: '-15.5 ft', section: '136RE', ...undisturbed },
          readings: innerRail,
        },
      ],
      ...more,
    }),
  );
}

const flange75: ReadingSpec = { quantity: 'flangeAngle', slot: 'right', entered: '75' };

describe('climb limit', () => {
  it('is 1.128 for 75° and µ = 0.5 (Nadal, 1896)', () => {
    const at = hopper({
      wheel: [flange75],
      outerRail: [{ quantity: 'gaugeFaceFriction', entered: '0.50' }],
    });
    const limit = at.measured('climbLimit');
    expect(limit.value).toBeCloseTo(1.128, 3);
    expect(limit.u).toBeGreaterThan(0.02);
    expect(limit.u).toBeLessThan(0.12);
    expect(limit.readings).toEqual(['w1.flangeAngle.right', 'high.gaugeFaceFriction']);
    expect(limit.remarks.join(' ')).toContain('gauge face was not measured');
  });

  it('takes the shallower of flange and gauge face: 60° and 0.5 is 0.660', () => {
    const at = hopper({
      wheel: [flange75],
      outerRail: [
        { quantity: 'gaugeFaceFriction', entered: '0.50' },
        { quantity: 'gaugeFaceAngle', entered: '60' },
      ],
    });
    expect(at.measured('climbLimit').value).toBeCloseTo(0.66, 3);
    expect(at.measured('climbLimit').remarks.join(' ')).toContain('the gauge face is the shallower');
  });

  it('is not invented without friction; the dry value is labelled conditional', () => {
    const at = hopper({ wheel: [flange75] });
    expect(at.get('climbLimit')).toMatchObject({
      kind: 'notMeasured',
      missing: ['friction of the gauge face near the POD'],
    });
    const dry = at.measured('climbLimitAtDryFriction');
    expect(dry.value).toBeCloseTo(1.128, 3);
    expect(dry.title).toContain('if µ were 0.5');
    expect(dry.remarks.join(' ')).toContain('Conditional');
    expect(dry.method.sources.some(({ status }) => status === 'from memory')).toBe(true);
  });

  it('adds the other wheel’s friction for the axle (Weinstock, 1984)', () => {
    const at = hopper({
      wheel: [flange75],
      outerRail: [{ quantity: 'gaugeFaceFriction', entered: '0.50' }],
      innerRail: [{ quantity: 'topOfRailFriction', entered: '0.40' }],
    });
    expect(at.measured('axleSumLimit').value).toBeCloseTo(1.528, 3);
  });
});

describe('climb distance', () => {
  const length = (entered: string): ReadingSpec => ({ quantity: 'climbLength', slot: 'right', entered });
  const profilometer = [
    {
      id: 'prof',
      fields: { name: 'P1', kind: 'profilometer', standardUncertainty: '0.05 mm' },
    },
    { id: 'angle', fields: { name: 'A1', kind: 'angleGauge', standardUncertainty: '0.1°' } },
  ];

  it('is TCRP Report 71 eq. 2.4 inside the table, and says the angle of attack is assumed', () => {
    const at = hopper({
      wheel: [
        { quantity: 'flangeAngle', slot: 'right', entered: '70.0', instrumentId: 'angle' },
        { ...length('0.600'), instrumentId: 'prof' },
      ],
      more: { instrument: profilometer },
    });
    const distance = at.measured('climbDistance');
    const A =
      (100 / (-1.9128 * 70 + 146.56) + 3.1) * 0.6 - 1 / (-0.0092 * 4900 + 1.2152 * 70 - 39.031) + 1.23;
    const B = (10 / (-21.157 * 0.6 + 2.1052) + 0.05) * 70 + 10 / (0.2688 * 0.6 - 0.0266) - 5;
    expect(fromCanonical(distance.value, 'ft', 'alongTrack')).toBeCloseTo((A * B * 0.6) / (5 + B * 0.6), 6);
    expect(distance.u).toBeGreaterThan(0);
    expect(distance.remarks.join(' ')).toContain('5 mrad is assumed');
  });

  it('is out of range for a steeper wheel', () => {
    const at = hopper({
      wheel: [{ ...flange75, entered: '77' }, length('0.600')],
    });
    expect(at.get('climbDistance')).toMatchObject({ kind: 'outOfRange' });
  });

  it('gives no value when many draws leave the table, and gives the share', () => {
    const at = hopper({ wheel: [{ ...flange75, entered: '75.0' }, length('0.600')] });
    const distance = at.get('climbDistance');
    expect(distance.kind).toBe('outOfRange');
    expect(JSON.stringify(distance)).toMatch(/\d+ % of the draws/);
  });

  it('names what is missing', () => {
    expect(hopper({ wheel: [flange75] }).get('climbDistance')).toMatchObject({
      kind: 'notMeasured',
      missing: ['flange length of the flanging wheel of the first derailed axle'],
    });
  });
});

describe('rollover', () => {
  it('is 0.45 for 136RE loaded at mid-head, 0.479 canted 1:40 inward', () => {
    const upright = hopper({ outerRail: [{ quantity: 'railCant', entered: '0' }] });
    expect(upright.measured('rolloverFlangingRail').value).toBeCloseTo(3 / 6.6875, 4);
    const inward = hopper({ outerRail: [{ quantity: 'railCant', entered: '1.43' }] });
    expect(inward.measured('rolloverFlangingRail').value).toBeCloseTo(0.479, 3);
    expect(inward.measured('rolloverFlangingRail').remarks.join(' ')).toContain('Running band not recorded');
  });

  it('is 0.27 for the low rail with its band on the field side', () => {
    const at = hopper({
      innerRail: [
        { quantity: 'railCant', entered: '0' },
        { quantity: 'contactBand', state: 'fieldSide' },
      ],
    });
    expect(at.measured('rolloverOtherRail').value).toBeCloseTo(2 / 7.3125, 4);
    expect(at.measured('rolloverOtherRail').readings).toContain('low.contactBand');
  });

  it('is not given without the cant', () => {
    expect(hopper({}).get('rolloverOtherRail')).toMatchObject({
      kind: 'notMeasured',
      missing: ['cant of the low (or other) rail near the POD'],
    });
  });
});

describe('drop-in margin', () => {
  const at = hopper({
    wheel: [
      { quantity: 'backToBack', slot: '0', entered: '53 1/16' },
      { quantity: 'backToBack', slot: '120', entered: '53 1/16' },
      { quantity: 'backToBack', slot: '240', entered: '53 1/16' },
      { quantity: 'flangeThickness', slot: 'right', entered: '1 1/16' },
      { quantity: 'rimWidth', slot: 'left', entered: '5 11/16' },
    ],
    more: {
      station: stationSheet([-2, -1, 0], {
        gauge: (step) => (step === -1 ? '57 9/16' : '56 9/16'),
        'lateralMovement.left': (step) => (step === -1 ? '9/16' : null),
        'lateralMovement.right': (step) => (step === -1 ? '11/16' : null),
      }),
    },
  });

  it('is B + t + W − s − G, standing and under load', () => {
    const standing = 53.0625 + 1.0625 + 5.6875 - 0.75 - 57.5625;
    expect(at.measured('dropInMarginStanding').value).toBeCloseTo(inch(standing), 6);
    const loaded = at.measured('dropInMargin');
    expect(loaded.value).toBeCloseTo(inch(standing - 1.25), 6);
    expect(loaded.readings).toHaveLength(8);
    // The overlap alone, 1/2 to 1 in, gives 1/4/√3 in.
    expect(loaded.u).toBeGreaterThan(inch(0.25) / Math.sqrt(3));
    expect(loaded.limits[0]).toMatchObject({ sense: 'min', limit: 0 });
  });

  it('says what took it', () => {
    expect(at.measured('dropInShare:movement').value).toBeCloseTo(inch(1.25), 6);
    expect(at.measured('dropInShare:staticGauge').value).toBeCloseTo(inch(57.5625 - 56.5), 6);
    expect(at.measured('dropInShare:flangeWear').value).toBeCloseTo(inch(1.15625 - 1.0625), 6);
  });
});

describe('loads', () => {
  it('gives the static wheel load: 63,000 lb on four axles is 7,875 lb', () => {
    const load = hopper({}).measured('wheelLoad:v1');
    expect(fromCanonical(load.value, 'kip', 'force')).toBeCloseTo(7.875, 6);
  });

  it('gives the shift of load by unbalance: −4 in, 79 in high is −17.6 % of the wheel load', () => {
    const at = hopper({
      more: {
        readings: [{ quantity: 'speedAtPod', entered: '0 mph' }],
        station: stationSheet(range(-10, 0), { midOrdinate62: () => '6', crosslevel: () => '4' }),
      },
    });
    const shift = at.measured('unbalanceShift');
    expect(shift.value).toBeCloseTo((2 * -4 * 79) / 3600, 4);
    expect(shift.remarks.join(' ')).toContain('anywhere from 60 to 98 in');
    expect(at.measured('unbalanceLateral').value).toBeCloseTo(-4 / 60, 4);
  });
});

describe('point clearance', () => {
  const turnout = (movement: string): RecordSpec => ({
    turnout: [
      {
        id: 'x1',
        fields: { name: 'East switch', movement, pointRead: 'right', ...undisturbed },
        readings: [
          { quantity: 'pointGap', entered: '1/16' },
          { quantity: 'tipThickness', entered: '3/16' },
          { quantity: 'tipDepth', entered: '13/16' },
          { quantity: 'guardCheckGauge', entered: `54 1/16` },
        ],
      },
    ],
  });
  const wheel: readonly ReadingSpec[] = [
    flange75,
    { quantity: 'flangeHeight', slot: 'right', entered: '1 3/16' },
  ];

  it('is how far the tip stands inside the flange face, and how probable a touch is', () => {
    const clearance = hopper({ wheel, more: turnout('facing') }).measured('pointClearanceTip:x1');
    // Straight face down to the 12-mm round: 30.1625 − 12 + 12 cos 75° = 21.268 mm; the tip at 20.6375 mm
    // lies on the face: (20.6375 − 9.525)/tan 75° − (1/16 + 3/16) in = 2.978 − 6.35 = −3.372 mm.
    expect(clearance.value).toBeCloseTo(-3.372, 3);
    expect(clearance.limits[0]?.exceeded).toBe(true);
    expect(clearance.limits[0]?.probabilityExceeds).toBeGreaterThan(0.9);
    expect(clearance.readings).toContain('w1.flangeHeight.right');
  });

  it('is not asked of a trailing movement; the guard check gauge still is', () => {
    const at = hopper({ wheel, more: turnout('trailing') });
    expect(at.has('pointClearanceTip:x1')).toBe(false);
    // 49 CFR 213.143(a), class 2: not less than 4 ft 6 1/4 in.
    expect(at.measured('guardCheckGauge:x1').limits[0]).toMatchObject({ exceeded: true, sense: 'min' });
  });
});
