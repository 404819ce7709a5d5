import { describe, expect, it } from 'vitest';
import { elasticForceKn, gearForceKn, gearOf, kindOfGear, type DraftGear } from '~/lib/mechanics/draft-gear';
import { ROLL_FREQUENCIES_HZ, resonantSpeedMs } from '~/lib/mechanics/harmonic-roll';
import { overturningShare, overturningUnbalanceMm, ROLL_FACTORS } from '~/lib/mechanics/overturning';
import { railAreaMm2, railCompressionKn } from '~/lib/mechanics/track-buckle';
import { fromCanonical, toCanonical } from '~/lib/readings/convert';
import { curvatureOfDegrees } from '~/lib/track/curvature';
import { maximumCurvingSpeedMph, maximumCurvingSpeedMs } from '~/lib/track/curving-speed';

const inches = (value: number): number => toCanonical(value, 'in', 'crossLength');

describe('overturning', () => {
  const overturnMph = (degrees: number, elevationIn: number, centreIn: number, roll: number): number =>
    fromCanonical(
      maximumCurvingSpeedMs(
        curvatureOfDegrees(degrees),
        inches(elevationIn),
        overturningUnbalanceMm(inches(centreIn), roll),
      ),
      'mph',
      'speed',
    );

  it('of a train in 1947 on a curve of 8.5°, which its investigators put at 65 mph, lies within the screen’s range', () => {
    // “The Physics of Disaster”, Scientific American (online, 2012), which does not give the elevation.
    for (const elevationIn of [0, 2, 4]) {
      expect(overturnMph(8.5, elevationIn, 98, ROLL_FACTORS[1])).toBeLessThan(65);
      expect(overturnMph(8.5, elevationIn, 60, ROLL_FACTORS[0])).toBeGreaterThan(65);
    }
    // About the middle of it: 3 in of elevation, a locomotive’s 80 in, stiffly sprung.
    expect(Math.abs(overturnMph(8.5, 3, 80, 1) / 65 - 1)).toBeLessThan(0.05);
  });

  it('begins with the resultant leaving the middle third, the middle 20 of 60 in, when a third of the load has left the inner rail', () => {
    // Practical guides to railway engineering take rail contacts 60 in apart and the middle third as stable.
    const centre = inches(84);
    const unbalance = (inches(10) * inches(60)) / centre;
    expect(overturningShare(unbalance, centre, 1)).toBeCloseTo(1 / 3, 12);
  });
});

describe('maximum curving speed', () => {
  it('is 38 mph for 4° and 1 in, as a published accident report (United States, derailment of 25 May 1989) has it', () => {
    expect(Math.round(maximumCurvingSpeedMph(4, 1, 3))).toBe(38);
  });
});

describe('harmonic roll', () => {
  it('is resonant between about 12 and 24 mph on 39-ft rail (Interface, the Journal of Wheel/Rail Interaction, February 2005)', () => {
    const [low, high] = ROLL_FREQUENCIES_HZ.map((hz) => fromCanonical(resonantSpeedMs(hz), 'mph', 'speed'));
    expect(low).toBeGreaterThan(12);
    expect(low).toBeLessThan(14);
    expect(high).toBeLessThan(24);
    expect(high).toBeGreaterThan(20);
  });
});

describe('heat in welded rail', () => {
  const MODULUS_PSI = 30e6;
  const MILES = 260;

  it('strains 260 miles of it by 310 ft for 35 °F and by 490 ft for 55 °F (Railway Age, July 2022)', () => {
    const area = railAreaMm2('136RE');
    const modulus = toCanonical(MODULUS_PSI, 'psi', 'pressure') / 1e6;
    for (const [fahrenheit, feet] of [
      [35, 310],
      [55, 490],
    ] as const) {
      const strain = railCompressionKn(area, fahrenheit / 1.8) / (2 * area * modulus);
      expect(Math.abs((strain * MILES * 5280) / feet - 1)).toBeLessThan(0.015);
    }
  });

  it('from memory: 195 psi for each °F, so that a 136-lb rail of 13.35 in² pushes with 2,600 lb/°F', () => {
    const perRail = railCompressionKn(railAreaMm2('136RE'), 1 / 1.8) / 2;
    expect(Math.abs(fromCanonical(perRail, 'lbf', 'force') / 2600 - 1)).toBeLessThan(0.02);
  });
});

describe('draft gear', () => {
  const gear = gearOf(kindOfGear('friction'));
  const FAST_MS = 10;

  it('from memory of AAR specification M-901E: travels 3 1/4 in and closes at 500 kip: two of them in a coupling, friction of the loading stroke in it', () => {
    expect(gear.travelM / 2 / 0.0254).toBeCloseTo(3.25, 1);
    const closing = gearForceKn(gear, gear.slackM / 2 + gear.travelM, FAST_MS);
    expect(Math.abs(fromCanonical(closing, 'kip', 'force') / 500 - 1)).toBeLessThan(0.01);
  });

  /** Work of the loading and of the unloading stroke of one gear, kJ. */
  const strokes = (worked: DraftGear): readonly [number, number] => {
    const steps = 2000;
    let [put, back] = [0, 0];
    for (let i = 0; i < steps; i += 1) {
      const x = worked.slackM / 2 + ((i + 0.5) / steps) * worked.travelM;
      put += (gearForceKn(worked, x, FAST_MS) * worked.travelM) / steps;
      back += (gearForceKn(worked, x, -FAST_MS) * worked.travelM) / steps;
    }
    return [put / 2, back / 2];
  };
  const FT_LB_PER_KJ = 737.56215;

  it('engineering judgement: takes up two thirds of the energy put in', () => {
    const [put, back] = strokes(gear);
    expect(1 - back / put).toBeCloseTo(2 / 3, 2);
    expect(elasticForceKn(gear, gear.slackM / 2)).toBe(0);
  });

  it('from memory of M-901E: takes in, at the most cubic, the least allowed, 36,000 ft·lb', () => {
    const [put] = strokes(gearOf(kindOfGear('friction'), { cubic: 'most' }));
    expect(Math.abs((put * FT_LB_PER_KJ) / 36_000 - 1)).toBeLessThan(0.03);
  });

  it('a maker’s data sheet: takes in its share of force × travel, 45,520 ft·lb at 2.93 in and 566 kip', () => {
    const [put] = strokes(gear);
    const share = put / (gearForceKn(gear, gear.slackM / 2 + gear.travelM, FAST_MS) * (gear.travelM / 2));
    expect(Math.abs(share / (45_520 / ((2.93 / 12) * 566_000)) - 1)).toBeLessThan(0.02);
  });
});
