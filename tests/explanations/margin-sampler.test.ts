import { describe, expect, it } from 'vitest';
import { FACTS } from '~/lib/explanations/facts';
import { marginSampler, unmeasuredInputs } from '~/lib/explanations/margin-sampler';
import { climbLimitMargin } from '~/lib/explanations/margins/climb-limit';
import { dropInMarginWitness } from '~/lib/explanations/margins/drop-in';
import { pointReachMargin } from '~/lib/explanations/margins/point-reach';
import { rolloverShareMargin } from '~/lib/explanations/margins/rollover-share';
import { wheelLoadMargin } from '~/lib/explanations/margins/wheel-load';
import { curvingRatioMargin } from '~/lib/explanations/margins/curving-ratio';
import type { MarginWitness } from '~/lib/explanations/witness';
import type { KeyInputId, KeyInputs } from '~/lib/findings/key-input';
import { keyInputs } from '~/lib/findings/key-inputs';
import { carInCurve } from '~/lib/mechanics/car-in-curve';
import { truckSteering } from '~/lib/mechanics/friction-centre';
import { curvatureOfDegrees } from '~/lib/track/curvature';
import { buildRecord } from '../findings/record-builder';

const nothing = keyInputs(buildRecord({}), { seed: 1 });
const degrees = (n: number): number => (n * Math.PI) / 180;

const measured = (values: Readonly<Partial<Record<KeyInputId, number>>>, u = 0): KeyInputs => ({
  ...nothing,
  ...Object.fromEntries(
    Object.entries(values).map(([id, value]) => [
      id,
      { ...nothing[id as KeyInputId], measured: { value, u, readings: [id], remark: '' } },
    ]),
  ),
});
const margins = FACTS.flatMap((fact) => fact.witnesses).filter(
  (witness): witness is MarginWitness => witness.kind === 'margin',
);

describe('margins drawn for a case and for the reference', () => {
  it('give λ of exactly 1 for every outcome when nothing was measured', () => {
    const sample = marginSampler(7);
    expect(margins.length).toBeGreaterThanOrEqual(7);
    for (const margin of margins) {
      expect(new Set(Object.values(sample(margin, nothing).weights)), margin.id).toEqual(new Set([1]));
      expect(unmeasuredInputs(margin, nothing)).toEqual(margin.inputs);
    }
  });

  it('repeat themselves for one seed, and differ little for another', () => {
    const inputs = measured({ flangeAngle: degrees(68) }, degrees(1));
    const [a, b, c] = [3, 3, 4].map((seed) => marginSampler(seed)(climbLimitMargin, inputs));
    expect(a).toEqual(b);
    expect(c).not.toEqual(a);
    expect(c!.spread[1]).toBeCloseTo(a!.spread[1], 1);
  });

  it('move towards the outcome that was measured', () => {
    // 64° on µ 0.5: (2.050 − 0.5)/(1 + 1.025) = 0.766
    const shallow = marginSampler(1)(
      climbLimitMargin,
      measured({ flangeAngle: degrees(70), gaugeFaceAngle: degrees(64), gaugeFaceFriction: 0.5 }),
    );
    expect(shallow.spread[1]).toBeCloseTo(0.766, 3);
    expect(shallow.weights.low).toBeGreaterThan(1);
    expect(shallow.weights.high).toBeLessThan(0.01);
  });

  it('count draws that have no answer for no outcome', () => {
    const half: MarginWitness = {
      ...climbLimitMargin,
      id: 'half',
      compute: ([a = 0]) => (a > degrees(70) ? NaN : 0.5),
    };
    const { weights, spread } = marginSampler(1)(half, nothing);
    expect(weights).toEqual({ low: 1, middle: 1, high: 1 });
    expect(spread).toEqual([0.5, 0.5, 0.5]);
  });
});

describe('the margins themselves', () => {
  const of = (margin: MarginWitness, ...values: readonly number[]): number => margin.compute(values);

  it('the shallower of flange and gauge face governs the climb limit', () => {
    expect(of(climbLimitMargin, degrees(75), degrees(85), 0.5)).toBeCloseTo(1.128, 3);
    expect(of(climbLimitMargin, degrees(75), degrees(60), 0.5)).toBeCloseTo(0.66, 3);
  });

  it('a new narrow-flange wheelset has nothing left at about 60 in of gauge, no overlap asked', () => {
    expect(of(dropInMarginWitness, 1349.375, 29.36875, 145.25625, 1524, 0, 0)).toBeCloseTo(0, 3);
  });

  it('an empty car on flat track keeps its standing load; twist takes of it, most beyond the side bearings', () => {
    const empty = 63_000 * 0.45359237;
    // 63,000 lb over eight wheels: 7,875 lb = 35.03 kN
    expect(of(wheelLoadMargin, empty, 4, 0, 6.35, 4, 165)).toBeCloseTo(35.03, 2);
    // (4·35.03 − 44.48) kN·165 mm tips it over the edges of its plates: over 2·1524 mm, 5.18 kN.
    expect(of(wheelLoadMargin, empty, 4, 25, 6.35, 4, 165)).toBeCloseTo(29.85, 2);
    expect(of(wheelLoadMargin, empty, 4, 50, 6.35, 4, 165)).toBeLessThan(25);
    expect(of(wheelLoadMargin, empty, 4, 500, 6.35, 4, 165)).toBe(0);
  });

  it('side force over load is that of the curving loads, whatever the weight, and hardly any on tangent', () => {
    const sharp = 8 / (5729.58 * 0.3048);
    // 0.0007·8·V² = 4 in at 26.73 mph
    const balance = Math.sqrt(4 / (0.0007 * 8)) * 0.44704;
    const sliding = curvatureOfDegrees(4);
    const ratio = of(curvingRatioMargin, sharp, 101.6, balance, 0.5, 1.78, 2000, sliding, 0.2, 0.11);
    const loaded = carInCurve({
      curvaturePerM: sharp,
      elevationMm: 101.6,
      speedMs: balance,
      wheelKn: 145,
      friction: 0.5,
      slidingFromPerM: sliding,
      wheelbaseM: 1.78,
      gravityCentreMm: 2000,
      offsetMm: 0,
      liftedKn: 0,
      inwardKn: 0,
      plateFriction: 0.2,
      plateRadiusM: 0.11,
    });
    expect(ratio).toBeCloseTo(truckSteering(loaded).lateralsKn[0] / loaded.verticalsKn[0], 9);
    // The inner leading wheel slides sideways and the trailing axle turns the truck: more than the friction alone.
    expect(ratio).toBeGreaterThan(0.5);
    expect(of(curvingRatioMargin, 0, 0, 10, 0.5, 1.78, 2000, sliding, 0.2, 0.11)).toBeLessThan(0.01);
    expect(of(curvingRatioMargin, sharp, 101.6, balance, 0.3, 1.78, 2000, sliding, 0.2, 0.11)).toBeLessThan(
      ratio,
    );
  });

  it('an upright rail under a sound tread keeps its usual resistance; hollow and outward lean take of it', () => {
    expect(of(rolloverShareMargin, 0, 0, 0)).toBe(1);
    expect(of(rolloverShareMargin, 5, 0, 0)).toBeCloseTo(0.667, 2);
    expect(of(rolloverShareMargin, 0, 0, -1 / 40)).toBeLessThan(0.95);
    expect(of(rolloverShareMargin, 0, -1 / 10, 1 / 40)).toBeLessThan(0.9);
  });

  it('a point standing open lies farther outside the flange face', () => {
    const closed = of(pointReachMargin, 0, 6, 19, 0, 0, 28, degrees(80), degrees(70));
    const open = of(pointReachMargin, 8, 6, 19, 0, 0, 28, degrees(80), degrees(70));
    expect(closed - open).toBeCloseTo(8, 9);
    expect(of(pointReachMargin, 8, 6, 30, 0, 0, 28, degrees(80), degrees(70))).toBe(2);
  });
});
