import { describe, expect, it } from 'vitest';
import {
  curveResistance,
  davisResistance,
  gradeResistance,
  vehicleResistance,
} from '~/lib/mechanics/resistance';
import { toCanonical } from '~/lib/readings/convert';

/**
 * US Army Transportation School, subcourse TR0603, “Rail operations, computations”, example of gross
 * trailing load: 1.5 % grade, 10° curve, rolling resistance 7 lb/ton, continuous tractive effort
 * 36,000 lb. The figures of its steps e and f.
 */
describe('TR0603, worked example of gross trailing load', () => {
  it('has 30 lb/ton of grade and 8 lb/ton of curve resistance', () => {
    expect(gradeResistance(1.5)).toBeCloseTo(30, 12);
    expect(curveResistance(10)).toBeCloseTo(8, 12);
  });

  it('sums to 45 lb/ton with its rolling resistance of 7', () => {
    expect(gradeResistance(1.5) + curveResistance(10) + 7).toBeCloseTo(45, 12);
  });
});

describe('Webb, The Economics of Railroad Construction', () => {
  it('§ 117: the grade resistance is the weight times the rate of grade, with no approximation worth the name', () => {
    expect(gradeResistance(1.3) / 2000).toBeCloseTo(0.013, 12);
  });

  it('§ 180: two pounds per ton is the resistance of a 0.1 % grade', () => {
    expect(gradeResistance(0.1)).toBeCloseTo(2, 12);
  });

  it('§ 180: 0.04 to 0.05 % of grade makes up for a degree of curve, for average conditions', () => {
    expect(curveResistance(1)).toBeGreaterThanOrEqual(gradeResistance(0.04) - 1e-12);
    expect(curveResistance(1)).toBeLessThanOrEqual(gradeResistance(0.05));
  });
});

/** Grade: 20 lb of a short ton’s 2,000 lb is one hundredth; the rest of this file from memory. */
describe('resistance in canonical units', () => {
  it('on a grade of 1 % is one hundredth of the weight', () => {
    const { gradeKn } = vehicleResistance({
      massKg: 100_000,
      axles: 4,
      speedMs: 10,
      grade: 0.01,
      curvaturePerM: 0,
      dragFactor: 0.07,
    });
    expect(gradeKn).toBeCloseTo(980.665 * 0.01, 9);
  });

  it('of a 100-ton car at 40 mph by the modified Davis formula: 0.6 + 0.8 + 0.4 + 1.12 lb/ton, from memory', () => {
    expect(davisResistance(25, 4, 40)).toBeCloseTo(2.92, 10);
    const { rollingKn } = vehicleResistance({
      massKg: toCanonical(100, 'ton', 'mass'),
      axles: 4,
      speedMs: toCanonical(40, 'mph', 'speed'),
      grade: 0,
      curvaturePerM: 0,
      dragFactor: 0.07,
    });
    expect(rollingKn).toBeCloseTo(toCanonical(292, 'lbf', 'force'), 6);
  });

  it('of a 91-t car at 15 m/s, its coefficients converted by hand: 2.942 N/t, 88.964 N an axle, 0.10968 N/t and 1.5581 N for each m/s', () => {
    // 267.72 + 355.86 + 149.71 + 350.57 N.
    const { rollingKn } = vehicleResistance({
      massKg: 91_000,
      axles: 4,
      speedMs: 15,
      grade: 0,
      curvaturePerM: 0,
      dragFactor: 0.07,
    });
    expect(rollingKn).toBeCloseTo(1.12386, 4);
  });
});
