import { describe, expect, it } from 'vitest';
import { axleSum, axleSumLimit } from '~/lib/mechanics/axle-sum';
import { CLIMB_DISTANCE_RANGE, climbDistance, climbDistanceFt } from '~/lib/mechanics/climb-distance';
import { climbLimit } from '~/lib/mechanics/climb-limit';
import { toCanonical } from '~/lib/readings/convert';
import worked from './climb-distance.json';

const rad = (degrees: number) => (degrees * Math.PI) / 180;

describe('single-wheel climb limit', () => {
  it('49 CFR part 238, appendix C(a)(1) (Nadal, μ = 0.5): 75° gives 1.128, 60° gives 0.660', () => {
    expect(climbLimit(rad(75), 0.5)).toBeCloseTo(1.128, 3);
    expect(climbLimit(rad(60), 0.5)).toBeCloseTo(0.66, 3);
  });

  it('Nadal, 1896: 75° and μ = 0.3 gives 1.619', () => {
    expect(climbLimit(rad(75), 0.3)).toBeCloseTo(1.619, 3);
  });

  it('from memory: EN 14363 limits Y/Q to 1.2, from 70° and μ = 0.36', () => {
    expect(climbLimit(rad(70), 0.36)).toBeCloseTo(1.2, 1);
  });

  it('statics of a wheel about to slide down (Nadal, 1896): components of N and μN give the same ratio', () => {
    for (const [delta, mu] of [
      [rad(60), 0.2],
      [rad(68), 0.4],
      [rad(75), 0.5],
    ] as const) {
      const lateral = Math.sin(delta) - mu * Math.cos(delta);
      const vertical = Math.cos(delta) + mu * Math.sin(delta);
      expect(climbLimit(delta, mu)).toBeCloseTo(lateral / vertical, 12);
    }
  });

  it('TCRP Report 71 vol. 5, fig. 2.1: more friction lowers the limit, at 75° from 2.65 at 0.1 to tan 30° at 1.0', () => {
    const limits = [0.1, 0.2, 0.3, 0.4, 0.5, 1.0].map((mu) => climbLimit(rad(75), mu));
    expect([...limits].sort((a, b) => b - a)).toEqual(limits);
    expect(limits[0]).toBeCloseTo(2.645, 2);
    expect(limits.at(-1)).toBeCloseTo(Math.tan(rad(30)), 12);
  });
});

describe('axle sum (Weinstock, 1984)', () => {
  it('75°, μ 0.5 on both wheels: 1.128 + 0.5', () => {
    expect(axleSumLimit(rad(75), 0.5, 0.5)).toBeCloseTo(1.628, 3);
  });

  it('at the limit of both wheels the measured sum is the limit', () => {
    const flange = climbLimit(rad(75), 0.5);
    expect(axleSum([flange * 60, -0.5 * 55], [60, 55])).toBeCloseTo(axleSumLimit(rad(75), 0.5, 0.5), 12);
  });
});

describe('flange-climb distance, TCRP Report 71 vol. 5, eq. 2.4', () => {
  it('agrees with the equation worked apart in Python (climb-distance.py)', () => {
    for (const { angleDeg, lengthIn, attackMrad, distanceFt } of worked.cases) {
      expect(climbDistanceFt(angleDeg, lengthIn, attackMrad)).toBeCloseTo(distanceFt, 9);
    }
  });

  it('75°, 0.75 in, 5 mrad: about 4.3 ft; 63°, 0.4 in, 5 mrad: about 1.94 ft', () => {
    expect(climbDistanceFt(75, 0.75, 5)).toBeCloseTo(4.3, 1);
    expect(climbDistanceFt(63, 0.4, 5)).toBeCloseTo(1.94, 2);
  });

  it('poles at 55.1°, 76.62° and 76.96° lie outside the range it is computed for', () => {
    expect(worked.polesDeg.map((pole) => Number(pole.toFixed(2)))).toEqual([55.12, 76.62, 76.96]);
    const [low, high] = CLIMB_DISTANCE_RANGE.flangeAngleDeg;
    for (const pole of worked.polesDeg) expect(pole < low || pole > high).toBe(true);
  });

  it('from memory of table 2.1: a 76.5° flange is out of range, not 17 ft', () => {
    expect(climbDistanceFt(76.5, 0.75, 5)).toBeGreaterThan(17);
    const answer = climbDistance(rad(76.5), 0.75 * 25.4, 0.005);
    expect(answer.kind).toBe('outOfRange');
    expect(answer.kind === 'outOfRange' && answer.why).toContain('76.5°');
  });

  it('the corners of the range are in range after conversion there and back', () => {
    for (const angle of CLIMB_DISTANCE_RANGE.flangeAngleDeg) {
      for (const length of CLIMB_DISTANCE_RANGE.climbLengthIn) {
        for (const attack of CLIMB_DISTANCE_RANGE.angleOfAttackMrad) {
          const answer = climbDistance(
            toCanonical(angle, '°', 'angle'),
            toCanonical(length, 'in', 'crossLength'),
            toCanonical(attack, 'mrad', 'angle'),
          );
          expect(answer.kind === 'measured' && answer.distanceM / 0.3048).toBeCloseTo(
            climbDistanceFt(angle, length, attack),
            6,
          );
        }
      }
    }
  });
});
