import { describe, expect, it } from 'vitest';
import { couplerLateralKn, couplerSwingLateralKn } from '~/lib/mechanics/coupler-lateral';
import {
  curveResistance,
  davisResistance,
  DRAG_FACTORS,
  gradeResistance,
  vehicleResistance,
} from '~/lib/mechanics/resistance';
import { unbalanceLateralKn, unbalanceShiftKn } from '~/lib/mechanics/unbalance-load';
import { toCanonical } from '~/lib/readings/convert';
import { curvatureOfDegrees } from '~/lib/track/curvature';

describe('train resistance', () => {
  it('US Army subcourse TR0603, para 2.11: ruling grade 1.5 % is 30 lb/ton, a 10° curve 8 lb/ton', () => {
    expect(gradeResistance(1.5)).toBe(30);
    expect(curveResistance(10)).toBe(8);
  });

  it('US Army subcourse TR0603, para 2.7: 20 lb lifts a ton of 2,000 lb up 1 %, which is what weight does', () => {
    const vehicle = {
      massKg: toCanonical(100, 'ton', 'mass'),
      axles: 4,
      speedMs: 0,
      grade: 0.01,
      curvaturePerM: curvatureOfDegrees(10),
      dragFactor: DRAG_FACTORS.conventional,
    };
    const { gradeKn, curveKn } = vehicleResistance(vehicle);
    expect(gradeKn).toBeCloseTo((vehicle.massKg * 9.80665 * 0.01) / 1000, 9);
    expect(curveKn).toBeCloseTo(toCanonical(800, 'lbf', 'force'), 9);
  });

  it('Webb, Economics of Railroad Construction, § 183: 10 lb/ton is the resistance of a 0.5 % grade', () => {
    expect(gradeResistance(0.5)).toBe(10);
  });

  it('AREA committee 16, as taught: K is 0.07, 0.0935 in containers, 0.16 for trailers on flatcars', () => {
    expect(DRAG_FACTORS).toEqual({ conventional: 0.07, containers: 0.0935, trailersOnFlatcars: 0.16 });
  });

  it('from memory, AREMA ch. 16 (modified Davis): 143-ton car on four axles at 40 mile/h, worked by hand', () => {
    // 0.6 + 20/35.75 + 0.01·40 + 0.07·1600/143 = 0.6 + 0.55944 + 0.4 + 0.78322
    expect(davisResistance(35.75, 4, 40)).toBeCloseTo(2.34266, 5);
  });
});

describe('unbalance (statics on a canted plane)', () => {
  it('4 in too much elevation, centre of gravity at 80 in: the high rail loses 18 % of the wheel load', () => {
    const wheelLoad = 60;
    const shift = unbalanceShiftKn(2 * wheelLoad, -101.6, 2032);
    expect(shift / wheelLoad).toBeCloseTo(-0.178, 3);
  });

  it('3 in of unbalance puts 1/20 of the axle load outward, 60 in between contacts', () => {
    expect(unbalanceLateralKn(300, 76.2)).toBeCloseTo(300 / 20, 10);
  });
});

describe('coupler force in a curve (statics)', () => {
  it('100,000 lb draft, 60-ft car, 10° curve: 100,000 · 60/(2 · 573) = 5,236 lb on each truck', () => {
    const lateral = couplerLateralKn(toCanonical(100, 'kip', 'force'), 18.288, curvatureOfDegrees(10));
    expect(lateral).toBeCloseTo(toCanonical((100000 * 60) / (2 * 572.958), 'lbf', 'force'), 6);
  });

  it('chords of a circle: pulls along the tangents at both coupler joints, resolved across the car', () => {
    const [force, length, radius] = [500, 20, 180];
    const half = Math.asin(length / (2 * radius));
    const joint = (at: number) => [radius * Math.sin(at), radius * Math.cos(at)] as const;
    const [rear, front] = [joint(-half), joint(half)];
    const along = [(front[0] - rear[0]) / length, (front[1] - rear[1]) / length] as const;
    const inward = [along[1], -along[0]] as const;
    // The train is pulled forward at the front joint and back at the rear one.
    const across = [
      force * (Math.cos(half) * inward[0] - Math.sin(half) * inward[1]),
      -force * (Math.cos(half) * inward[0] + Math.sin(half) * inward[1]),
    ] as const;
    const total = couplerLateralKn(force, length, 1 / radius) * 2;
    expect(across[0]).toBeCloseTo(across[1], 9);
    expect(across[0] + across[1]).toBeCloseTo(total, 9);
  });

  it('jackknife, 50 ft pin to pin on 40-ft truck centres: 1.25 F sin α', () => {
    const swing = (8 * Math.PI) / 180;
    expect(couplerSwingLateralKn(-400, swing, 15.24, 12.192)).toBeCloseTo(1.25 * 400 * Math.sin(swing), 9);
  });
});
