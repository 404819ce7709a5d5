import { describe, expect, it } from 'vitest';
import { netAxleLvMost, singleWheelLvMost, VEHICLE_SAFETY_LIMITS } from '../../lib/rules/vehicle-safety';

const rad = (degrees: number) => (degrees * Math.PI) / 180;

describe('vehicle/track interaction limits (49 CFR 213.333, from memory)', () => {
  it('one wheel: the climb limit with friction 0.5: 1.128 at 75°, 0.660 at 60°', () => {
    expect(singleWheelLvMost(rad(75))).toBeCloseTo(1.128, 3);
    expect(singleWheelLvMost(rad(60))).toBeCloseTo(0.66, 3);
  });

  it('one wheel: out of range below tan⁻¹ 0.5 and from 90°', () => {
    expect(singleWheelLvMost(rad(26))).toBeNaN();
    expect(singleWheelLvMost(rad(90))).toBeNaN();
  });

  it('net axle: 0.4 + 5.0/Va: 0.5 for an axle of 50 kips', () => {
    expect(netAxleLvMost(50 * 4.4482216152605)).toBeCloseTo(0.5, 12);
    expect(netAxleLvMost(0)).toBeNaN();
  });

  it('all count over 5 ft and say that they are from memory', () => {
    expect(VEHICLE_SAFETY_LIMITS).toHaveLength(4);
    for (const limit of VEHICLE_SAFETY_LIMITS) {
      expect(limit.overM / 0.3048).toBeCloseTo(5, 9);
      expect(limit.source.status).toBe('from memory');
    }
  });
});
