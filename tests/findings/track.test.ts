import { describe, expect, it } from 'vitest';
import { fromCanonical, toCanonical } from '~/lib/readings/convert';
import { buildRecord, range, stationSheet } from './record-builder';
import { found } from './by-id';

const inch = (n: number) => n * 25.4;
/** Half of a 1/16-in division over √3: JCGM 100:2008, 4.3.7. */
const U_RULE = inch(1 / 32) / Math.sqrt(3);
const CURVE = { alignment: 'curveLeft', trackClass: '2' };

describe('gauge against the limits of the class', () => {
  const record = buildRecord({
    fields: CURVE,
    station: stationSheet(
      range(-3, 1),
      {
        gauge: (step) => (step === -2 ? '57 15/16' : '56 13/16'),
        'lateralMovement.left': (step) => (step === -1 ? '11/16' : null),
        'lateralMovement.right': (step) => (step === -1 ? '7/16' : null),
      },
      (step) => ({ disturbance: step === 1 ? 'disturbed' : 'undisturbed' }),
    ),
  });
  const at = found(record);

  it('takes the widest undisturbed station, with its limit and probability', () => {
    const widest = at.measured('gaugeWidest');
    expect(widest.value).toBeCloseTo(inch(57 + 15 / 16), 9);
    expect(widest.u).toBeCloseTo(U_RULE, 9);
    expect(widest.readings).toEqual(['s-2.gauge']);
    const most = widest.limits.find((limit) => limit.sense === 'max');
    // 49 CFR 213.53(b), class 2: at most 4 ft 9 3/4 in; 3/16 in over is ten standard uncertainties.
    expect(most).toMatchObject({ citation: '49 CFR 213.53(b)', exceeded: true });
    expect(most?.limit).toBeCloseTo(inch(57.75), 9);
    expect(most?.probabilityExceeds).toBeGreaterThan(0.999);
  });

  it('adds the movement of both rails', () => {
    const loaded = at.measured('gaugeUnderLoad:s-1');
    expect(loaded.value).toBeCloseTo(inch(56.8125 + 0.6875 + 0.4375), 9);
    expect(loaded.u).toBeCloseTo(U_RULE * Math.sqrt(3), 9);
    expect(loaded.readings).toEqual(['s-1.gauge', 's-1.lateralMovement.left', 's-1.lateralMovement.right']);
    expect(at.measured('gaugeUnderLoadWidest').value).toBeCloseTo(inch(57 + 15 / 16), 9);
  });

  it('leaves the disturbed station out and says which', () => {
    expect(at.measured('gaugeWidest').remarks).toContain(
      '1 station left out, disturbed by the derailment: 1.',
    );
    expect(at.get('gauge:s1')).toMatchObject({
      kind: 'notMeasured',
      missing: ['gauge undisturbed; read only where disturbed by the derailment'],
    });
  });
});

describe('movement read on one rail only', () => {
  it('is a least value and says so', () => {
    const record = buildRecord({
      fields: CURVE,
      station: stationSheet([-1], { gauge: () => '57', 'lateralMovement.left': () => '1/4' }),
    });
    const loaded = found(record).measured('gaugeUnderLoad:s-1');
    expect(loaded.value).toBeCloseTo(inch(57.25), 9);
    expect(loaded.remarks.join(' ')).toContain('right rail not recorded');
  });
});

describe('curvature, elevation and speed', () => {
  // 6.0384 in is six degrees exactly: 1.0064 in of a 62-ft chord per degree.
  const record = buildRecord({
    fields: CURVE,
    readings: [{ quantity: 'speedAtPod', entered: '45 mph' }],
    station: stationSheet(range(-12, 0), { midOrdinate62: () => '6 1/32', crosslevel: () => '4' }),
  });
  const at = found(record);

  it('is six degrees', () => {
    const { value, readings, remarks } = at.measured('curvatureAtPod');
    expect(fromCanonical(value, '°curve', 'curvature')).toBeCloseTo(5.993, 2);
    expect(readings).toHaveLength(10);
    expect(remarks[0]).toContain('Mean of 10 stations');
  });

  it('gives the speeds of 49 CFR 213.57(b): D = 6, Ea = 4, Eu = 3 is 40.8 mph', () => {
    expect(fromCanonical(at.measured('maximumCurvingSpeed').value, 'mph', 'speed')).toBeCloseTo(40.85, 1);
    expect(fromCanonical(at.measured('balanceSpeed').value, 'mph', 'speed')).toBeCloseTo(30.88, 1);
  });

  it('gives the unbalance at the speed with its limit', () => {
    const unbalance = at.measured('unbalance');
    // 0.0007 · 5.993 · 45² − 4 = 4.495 in
    expect(fromCanonical(unbalance.value, 'in', 'crossLength')).toBeCloseTo(4.495, 2);
    expect(unbalance.limits[0]).toMatchObject({ exceeded: true, citation: '49 CFR 213.57(b), (c)' });
    expect(unbalance.remarks).toContain('Speed as reported, not from a recorder.');
  });

  it('prefers the recorder and carries its run', () => {
    const speedMs = toCanonical(38, 'mph', 'speed');
    const withRun = found(record, {
      seed: 1,
      recorder: { speedAtPod: { runId: 'run-1', speedMs, uMs: 0.2, remark: 'From the lead unit.' } },
    });
    const { value, readings } = withRun.measured('unbalance');
    expect(fromCanonical(value, 'in', 'crossLength')).toBeCloseTo(0.0007 * 5.993 * 38 ** 2 - 4, 2);
    expect(readings).toContain('run-1');
  });

  it('says what is missing for a speed', () => {
    const without = found(buildRecord({ fields: CURVE }));
    expect(without.get('unbalance')).toMatchObject({
      kind: 'notMeasured',
      missing: [
        'curvature at the POD',
        'speed at the POD',
        'crosslevel at undisturbed stations near the POD',
      ],
    });
  });
});

describe('warp', () => {
  const level = new Map([
    [-6, '0'],
    [-5, '7/16'],
    [-4, '2 9/16'],
    [-2, '1'],
    [-1, '0'],
    [0, '3/16'],
  ]);
  const record = buildRecord({
    fields: CURVE,
    station: stationSheet(range(-6, 0), { crosslevel: (step) => level.get(step) ?? null }),
  });
  const at = found(record);

  it('compares every pair less than 62 ft apart and not the pair 62 ft apart', () => {
    // Greatest: −6 to −4 and −4 to −1 both 2 9/16; −4 to 0 is exactly 62 ft, outside the rule.
    const worst = at.measured('warpWorst');
    expect(Math.abs(worst.value)).toBeCloseTo(inch(2.5625), 9);
    expect(worst.u).toBeCloseTo(U_RULE * Math.SQRT2, 9);
    expect(worst.remarks[0]).toContain('From station -6 to station -4, 31.0 ft');
    expect(worst.limits[0]).toMatchObject({ exceeded: true });
    expect(worst.limits[0]?.limit).toBeCloseTo(inch(2.25), 9);
  });

  it('says which way the track twists, and what lies just outside the rule', () => {
    expect(at.measured('warpAtPod').remarks).toContain(
      'The outer rail falls against the other in the direction of travel.',
    );
    const { value, remarks } = at.measured('warpWorst');
    expect(remarks[1]).toContain(value < 0 ? 'falls' : 'rises');
    // −6 to −2 is 62 ft and 1 in; −4 to 0, 62 ft too, is 2 3/8 in.
    expect(remarks).toContain(
      'Outside the rule, over exactly 62 ft: −2 3/8 in (−60.3 mm) at most, from station -4 to station 0.',
    );
    const tangent = buildRecord({
      fields: { alignment: 'tangent' },
      station: stationSheet([-1, 0], { crosslevel: (step) => (step === 0 ? '1/2' : '0') }),
    });
    expect(found(tangent).measured('warpWorst').remarks).toContain(
      'The left rail rises against the other in the direction of travel.',
    );
  });

  it('looks at the 62 ft before the POD by itself', () => {
    const near = at.measured('warpAtPod');
    expect(near.value).toBeCloseTo(inch(-2.5625), 9);
    expect(near.readings).toEqual(['s-4.crosslevel', 's-1.crosslevel']);
  });

  it('adds downward movement only where both rails were read', () => {
    const moving = buildRecord({
      fields: CURVE,
      station: stationSheet([-2, -1, 0], {
        crosslevel: () => '2',
        'verticalMovement.left': (step) => (step === -1 ? '1/2' : step === 0 ? '0' : null),
        'verticalMovement.right': (step) => (step === 0 ? '1/4' : '0'),
      }),
    });
    // Right rail high. At −1: 2 − 0 + 1/2; at 0: 2 − 1/4 + 0: change −3/4 in.
    const loaded = found(moving).measured('warpUnderLoad');
    expect(loaded.value).toBeCloseTo(inch(-0.75), 9);
    expect(loaded.remarks).toContain('From the 2 stations where downward movement was read on both rails.');
  });
});

describe('crosslevel', () => {
  it('on tangent is held against zero either way', () => {
    const record = buildRecord({
      fields: { alignment: 'tangent', trackClass: '3' },
      station: stationSheet([-1, 0], { crosslevel: (step) => (step === 0 ? '-2' : '1') }),
    });
    const worst = found(record).measured('crosslevelGreatest');
    expect(worst.value).toBeCloseTo(inch(-2), 9);
    expect(worst.limits).toHaveLength(1);
    expect(worst.limits[0]).toMatchObject({ exceeded: true, citation: '49 CFR 213.63(a)' });
  });

  it('on a curve is held against reverse elevation and the most elevation', () => {
    const record = buildRecord({
      fields: { alignment: 'curveRight', trackClass: '4' },
      station: stationSheet([-1, 0], { crosslevel: (step) => (step === 0 ? '-1 1/2' : '7 1/2') }),
    });
    const at = found(record);
    const reverse = at.measured('crosslevelLeast').limits.find(({ sense }) => sense === 'min');
    expect(reverse).toMatchObject({ exceeded: true });
    expect(reverse?.limit).toBeCloseTo(inch(-1.25), 9);
    const most = at.measured('crosslevelGreatest').limits.find(({ sense }) => sense === 'max');
    expect(most).toMatchObject({ exceeded: true, citation: '49 CFR 213.57(a)' });
    expect(most?.limit).toBeCloseTo(inch(7), 9);
  });
});

describe('alinement from uniform', () => {
  it('is the mid-ordinate less the nine-station average', () => {
    const record = buildRecord({
      fields: { alignment: 'curveLeft', trackClass: '3' },
      station: stationSheet(range(-8, 0), { midOrdinate62: (step) => (step === -4 ? '8' : '6') }),
    });
    const at = found(record);
    // Mean of nine is 6 + 2/9; deviation 2 − 2/9 = 1 7/9 in against 1 3/4 in for class 3.
    const kink = at.measured('alinement62:s-4');
    expect(kink.value).toBeCloseTo(inch(16 / 9), 9);
    expect(kink.u).toBeCloseTo(U_RULE * Math.sqrt(8 / 9), 9);
    expect(kink.readings).toHaveLength(9);
    expect(kink.limits[0]).toMatchObject({ exceeded: true, citation: '49 CFR 213.55(a)' });
    expect(kink.limits[0]?.limit).toBeCloseTo(inch(1.75), 9);
    expect(at.measured('alinement62Worst').remarks).toContain(
      'Uniform is the nine-station average, an adopted method for classes 1 to 5.',
    );
  });

  /** Offsets of a steady spiral, 1/16 in more every foot, read at places of the crew's own choosing. */
  const spiral = (feetAt: readonly number[], missing: readonly number[] = []) =>
    feetAt.map((ft) => ({
      id: `f${ft}`,
      fields: { name: String(ft), disturbance: 'undisturbed' },
      readings: [
        { quantity: 'stationPosition', entered: `${ft} ft` },
        ...(missing.includes(ft)
          ? []
          : [{ quantity: 'midOrdinate62', value: inch(5 + ft / 16), unit: 'in', entered: '' }]),
      ],
    }));
  const TEN_FEET = range(-20, 0).map((step) => step * 10);

  it('resamples a sheet that was not taken every quarter of the chord, and says so', () => {
    const at = found(buildRecord({ fields: CURVE, station: spiral(TEN_FEET) }));
    const worst = at.measured('alinement62Worst');
    expect(worst.value).toBeCloseTo(0, 9);
    expect(worst.remarks.join(' ')).toMatch(/the stations are 10(\.\d+)? ft/);
    expect(worst.remarks.join(' ')).toContain('Resampled at 17 stations');
    // Every point 15 ft 6 in from the middle lies between two stations: more than nine readings.
    expect(at.measured('alinement62:f-100').readings.length).toBeGreaterThan(9);
  });

  it('carries nothing across a missing station', () => {
    const at = found(buildRecord({ fields: CURVE, station: spiral(TEN_FEET, [-120]) }));
    // The point at −115.5 would lie between −120, not read, and −110; its opposite goes with it.
    expect(at.measured('alinement62:f-100').remarks.join(' ')).toContain('mean of 7 points here');
    expect(at.measured('alinement62:f-100').readings).not.toContain('f-120.midOrdinate62');
    expect(at.has('alinement62:f-120')).toBe(false);
  });

  it('is the same for an uneven sheet of the same spiral', () => {
    const uneven = [
      -200, -188, -181, -170, -152, -149, -133, -120, -104, -97, -83, -70, -55, -41, -30, -16, 0,
    ];
    const worst = found(buildRecord({ fields: CURVE, station: spiral(uneven) })).measured('alinement62Worst');
    // Half a foot is within the taping: what is left is less than that much of the spiral, averaged.
    expect(Math.abs(worst.value)).toBeLessThan(inch(0.5 / 16 / 4));
  });
});

describe('alinement just before the POD', () => {
  const record = (from: number) =>
    buildRecord({
      fields: { alignment: 'curveLeft', trackClass: '3' },
      station: stationSheet(
        range(from, 3),
        { midOrdinate62: (step) => (step === -2 ? '9' : step === -1 ? '8 1/2' : '7') },
        (step) => ({ disturbance: step > 0 ? 'disturbed' : 'undisturbed' }),
      ),
    });

  it('is measured from the nine stations before the last 62 ft, where the centred average shrinks about the kink', () => {
    const at = found(record(-20));
    const kink = at.measured('alinement62BeforePod');
    expect(kink.value).toBeCloseTo(inch(2), 9);
    // One reading against the mean of nine like it.
    expect(kink.u).toBeCloseTo(U_RULE * Math.sqrt(1 + 1 / 9), 9);
    expect(kink.readings).toHaveLength(10);
    expect(kink.readings).toContain('s-13.midOrdinate62');
    expect(kink.readings).toContain('s-5.midOrdinate62');
    expect(kink.remarks[0]).toBe('At station -2.');
    expect(kink.remarks[1]).toContain('9 stations, -13 to -5');
    expect(kink.limits[0]).toMatchObject({ exceeded: true, citation: '49 CFR 213.55(a)' });
    expect(at.measured('alinement62:s-2').value).toBeLessThan(inch(1.5));
  });

  it('asks for three stations before the last 62 ft', () => {
    expect(found(record(-7)).measured('alinement62BeforePod').value).toBeCloseTo(inch(2), 9);
    expect(found(record(-6)).get('alinement62BeforePod').kind).toBe('notMeasured');
  });
});

describe('readings that conflict', () => {
  it('are averaged, with their scatter when it is larger', () => {
    const record = buildRecord({
      fields: CURVE,
      station: [
        {
          id: 's0',
          fields: { name: '0', disturbance: 'undisturbed' },
          readings: [
            { quantity: 'stationPosition', entered: '0' },
            { quantity: 'gauge', entered: '56 1/2', id: 'a' },
            { quantity: 'gauge', entered: '57', id: 'b' },
          ],
        },
      ],
    });
    const gauge = found(record).measured('gauge:s0');
    expect(gauge.value).toBeCloseTo(inch(56.75), 9);
    expect(gauge.u).toBeCloseTo(inch(0.5) / Math.SQRT2, 9);
    expect(gauge.readings).toEqual(['a', 'b']);
    expect(gauge.remarks[0]).toContain('Mean of 2 standing readings');
  });
});

describe('state of the place', () => {
  const at = (own: string, station: string | null) =>
    found(
      buildRecord({
        fields: CURVE,
        station: [
          {
            id: 's0',
            fields: { name: '0', disturbance: station },
            readings: [
              { quantity: 'stationPosition', entered: '0' },
              { quantity: 'gauge', entered: '57', disturbance: own as 'notSaid' },
            ],
          },
        ],
      }),
    ).get('gaugeWidest').kind;

  it.each([
    ['undisturbed', 'undisturbed', 'measured'],
    ['notSaid', 'undisturbed', 'measured'],
    ['undisturbed', null, 'measured'],
    ['notSaid', null, 'notMeasured'],
    ['disturbed', 'undisturbed', 'notMeasured'],
    ['undisturbed', 'disturbed', 'notMeasured'],
    ['undisturbed', 'repaired', 'notMeasured'],
  ])('reading %s at a station %s is %s', (own, station, kind) => {
    expect(at(own, station)).toBe(kind);
  });
});

describe('curvature from a chord of another length', () => {
  const sheet = (readings: Parameters<typeof stationSheet>[1]) => stationSheet(range(-8, 0), readings);
  // 100-ft chord on six degrees: 8m/(c² + 4m²) with m = 15.71 in.
  const offsets = { midOrdinateOther: () => '15 11/16' };

  it('uses the length said for the sheet, with its uncertainty', () => {
    const at = found(
      buildRecord({
        fields: CURVE,
        readings: [{ quantity: 'otherChord', entered: '100 ft' }],
        station: sheet(offsets),
      }),
    );
    const curvature = at.measured('curvature:s-3');
    expect(fromCanonical(curvature.value, '°curve', 'curvature')).toBeCloseTo(5.99, 1);
    expect(curvature.readings).toEqual(['s-3.midOrdinateOther', 'case-1.otherChord']);
    expect(curvature.remarks.join(' ')).toContain('From a chord of 100');
  });

  it('finds nothing while the length is not said', () => {
    const at = found(buildRecord({ fields: CURVE, station: sheet(offsets) }));
    expect(at.has('curvature:s-3')).toBe(false);
    expect(at.get('curvatureAtPod')).toMatchObject({ kind: 'notMeasured' });
  });
});

describe('parts of the line', () => {
  // Tangent to −36, transition to −18, six degrees from there.
  const offset = (step: number) =>
    String(Math.round(16 * 6 * Math.min(1, Math.max(0, (step + 36) / 18))) / 16);
  const at = found(
    buildRecord({
      fields: CURVE,
      station: stationSheet(range(-60, 0), { midOrdinate62: offset, crosslevel: () => '3' }),
    }),
  );

  it('are found with their curvature, and where they meet', () => {
    expect(at.measured('linePart:1').title).toContain('tangent');
    expect(at.measured('linePart:2').title).toContain('transition');
    expect(at.measured('linePart:3').title).toContain('curve');
    expect(fromCanonical(at.measured('linePart:3').value, '°curve', 'curvature')).toBeCloseTo(5.96, 1);
    const meets = at.measured('lineBreak:2');
    expect(meets.dimension).toBe('alongTrack');
    expect(Math.abs(meets.value - toCanonical(-18 * 15.5, 'ft', 'alongTrack'))).toBeLessThan(
      Math.max(2 * meets.u, 1),
    );
    expect(meets.u).toBeGreaterThan(0);
    expect(at.has('linePart:4')).toBe(false);
  });

  it('keep the average at the POD within the body of the curve', () => {
    expect(at.measured('curvatureAtPod').remarks.join(' ')).toContain('within the curve the POD lies on');
  });

  it('keep a swing at a bad joint in the body of the curve', () => {
    // Eight degrees all along, but for a swing of an inch over the last stations.
    const swing = (step: number) => (step > -4 ? '9' : step > -8 ? '7' : '8');
    const swung = found(
      buildRecord({
        fields: CURVE,
        station: stationSheet(range(-40, 0), { midOrdinate62: swing, crosslevel: () => '2' }),
      }),
    );
    expect(swung.has('linePart:2')).toBe(true);
    const average = swung.measured('curvatureAtPod');
    // The ten stations of the 155 ft before the POD, not the few after the last swing.
    expect(average.readings).toHaveLength(10);
  });
});

describe('joints, runoff, gauge change and sound ties', () => {
  const rails = (step: number) => ({ joint: step % 2 === 0 ? 'left' : 'right' });
  // On tangent crosslevel counts the left rail high: low at left joints, high at right ones.
  const level = (step: number) => (step % 2 === 0 ? '-3/4' : '3/4');
  const record = (feetApart: number, levels: (step: number) => string | null = level) =>
    buildRecord({
      fields: { alignment: 'tangent', trackClass: '3' },
      station: stationSheet(range(-7, 0), { crosslevel: levels }, rails).map((station) => ({
        ...station,
        readings: station.readings?.map((reading) =>
          reading.quantity === 'stationPosition'
            ? { ...reading, entered: `${Number(station.fields?.name) * feetApart} ft` }
            : reading,
        ),
      })),
    });

  it('condemns six differences in a row of more than 1 1/4 in (49 CFR 213.63(a), footnote 2)', () => {
    const low = found(record(19.5)).measured('lowJoints');
    expect(low.value).toBeCloseTo(inch(1.5), 9);
    expect(low.readings).toHaveLength(7);
    expect(low.limits[0]).toMatchObject({ exceeded: true });
    expect(low.u).toBeGreaterThan(0);
  });

  it('does not when one of the six is within it, or lies the other way', () => {
    const one = found(record(19.5, (step) => (step === -3 ? '1/4' : level(step)))).measured('lowJoints');
    expect(one.limits[0]).toMatchObject({ exceeded: false });
    const highJoints = found(record(19.5, (step) => level(step + 1))).measured('lowJoints');
    expect(highJoints.value).toBeCloseTo(inch(-1.5), 9);
  });

  it('does not take joints less than 10 ft apart, or one without crosslevel, for staggered', () => {
    expect(found(record(9.5)).get('lowJoints')).toMatchObject({ kind: 'notMeasured' });
    const gap = found(record(19.5, (step) => (step === -3 ? null : level(step))));
    expect(gap.get('lowJoints')).toMatchObject({ kind: 'notMeasured' });
  });

  it('holds runoff and sound ties against the class, ties by the sharpness of the curve', () => {
    const at = found(
      buildRecord({
        fields: { alignment: 'curveLeft', trackClass: '3' },
        station: stationSheet(range(-8, 0), {
          midOrdinate62: (step) => (step < -4 ? '1' : '6'),
          soundTies: (step) => (step < -4 ? '8' : '9'),
          'runoff31.left': (step) => (step === -2 ? '2 1/4' : null),
        }),
      }),
    );
    // 49 CFR 213.109(b)(4), class 3: 8 up to two degrees, 10 above; 213.63(a): 2 in in 31 ft.
    expect(at.measured('soundTies:s-6').limits).toMatchObject([{ limit: 8, exceeded: false }]);
    expect(at.measured('soundTies:s-2').limits).toMatchObject([{ limit: 10, exceeded: true }]);
    expect(at.measured('soundTiesFewest').value).toBe(8);
    expect(at.measured('runoff31LeftWorst').limits[0]).toMatchObject({ exceeded: true });
    expect(at.get('runoff31RightWorst')).toMatchObject({ kind: 'notMeasured' });
  });

  it('finds how fast gauge changes, and the warp within 31 ft', () => {
    const at = found(
      buildRecord({
        fields: CURVE,
        station: stationSheet(range(-4, 0), {
          gauge: (step) => (step >= -1 ? '57 1/4' : '56 1/2'),
          crosslevel: (step) => (step === 0 ? '4' : step === -2 ? '5' : step === -3 ? '2' : '4'),
        }),
      }),
    );
    expect(at.measured('gaugeChangeWorst').value).toBeCloseTo(inch(0.75), 9);
    expect(at.measured('gaugeRateWorst').value).toBeCloseTo(0.75 / (15.5 * 12), 9);
    expect(at.measured('warpShortWorst').value).toBeCloseTo(inch(3), 9);
  });
});
