import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { carInCurve } from '~/lib/mechanics/car-in-curve';
import { couplerLateralKn, couplerSwingLateralKn } from '~/lib/mechanics/coupler-lateral';
import { vehicleResistance, DRAG_FACTORS } from '~/lib/mechanics/resistance';
import { unbalanceLateralKn, unbalanceShiftKn } from '~/lib/mechanics/unbalance-load';
import { onPlateKn, warpUnloadingKn } from '~/lib/mechanics/warp-unloading';

const SEED = { seed: 6227 };
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('unbalance', () => {
  it('changes side with the sign of unbalance and grows with each factor', () => {
    fc.assert(
      fc.property(real(50, 350), real(-150, 150), real(1000, 2700), (w, eu, h) => {
        expect(unbalanceLateralKn(w, -eu)).toBeCloseTo(-unbalanceLateralKn(w, eu), 10);
        expect(unbalanceShiftKn(w, -eu, h)).toBeCloseTo(-unbalanceShiftKn(w, eu, h), 10);
        expect(unbalanceShiftKn(2 * w, eu, h)).toBeCloseTo(2 * unbalanceShiftKn(w, eu, h), 9);
        // Moment of the lateral force about the rail heads is carried by the shift.
        expect(unbalanceShiftKn(w, eu, h) * 1524).toBeCloseTo(unbalanceLateralKn(w, eu) * h, 6);
      }),
      SEED,
    );
  });
});

describe('twisted track under a car on two three-piece trucks', () => {
  const [springs, bearings, rails] = [79 * 25.4, 50 * 25.4, 60 * 25.4];

  it('takes off the load whose moment the springs, the plates and the side bearings answer with that twist', () => {
    fc.assert(
      fc.property(
        real(1, 200_000),
        real(0, 12),
        real(2, 6),
        real(0, 600),
        real(100, 200),
        (m, c, k, n, r) => {
          // Each truck’s springs give m over k·b²/2; past the edge of the plates both trucks tip by 2c/e.
          const [given, tipped] = [(2 * m) / ((k * springs ** 2) / 2), m > n * r ? (4 * c) / bearings : 0];
          const warpMm = (given + tipped) * rails;
          const car = { clearanceMm: c, springKnPerMm: k, plateKn: n, plateEdgeMm: r };
          expect(warpUnloadingKn({ ...car, warpMm })).toBeCloseTo(m / 2 / rails, 6);
          expect(warpUnloadingKn({ ...car, warpMm: -warpMm })).toBe(warpUnloadingKn({ ...car, warpMm }));
          // While it tips over the plates the load hardly changes.
          if (m > n * r)
            expect(
              warpUnloadingKn({ ...car, warpMm: (given * rails * n * r) / m + (tipped * rails) / 2 }),
            ).toBeCloseTo((n * r) / 2 / rails, 6);
        },
      ),
      SEED,
    );
  });

  it('takes it off both outer wheels, for a side frame rests on both axles, and puts it on the inner ones', () => {
    const car = {
      curvaturePerM: 0.004,
      elevationMm: 0,
      speedMs: 0,
      wheelKn: 35,
      friction: 0.4,
      slidingFromPerM: 0.002,
      wheelbaseM: 1.75,
      gravityCentreMm: 2000,
      offsetMm: 0,
      liftedKn: 5,
      inwardKn: 0,
      plateFriction: 0.2,
      plateRadiusM: 0.11,
    };
    expect(carInCurve(car).verticalsKn).toEqual([30, 40, 30, 40]);
    // No more than there is on them.
    const [outer, inner] = carInCurve({ ...car, liftedKn: 50 }).verticalsKn;
    expect(outer).toBeGreaterThan(0);
    expect(outer + inner).toBeCloseTo(70, 9);
  });

  it('rests on its plates with what its wheels carry less the truck', () => {
    expect(onPlateKn(35)).toBeCloseTo(140 - 44.48, 2);
    expect(onPlateKn(5)).toBe(0);
  });
});

describe('coupler force', () => {
  it('inward in draft, outward in buff, nothing on tangent, the same in either hand', () => {
    fc.assert(
      fc.property(real(1, 2000), real(10, 30), real(0.0005, 0.01), (f, s, k) => {
        expect(couplerLateralKn(f, s, k)).toBeGreaterThan(0);
        expect(couplerLateralKn(-f, s, k)).toBe(-couplerLateralKn(f, s, k));
        expect(couplerLateralKn(f, s, -k)).toBe(couplerLateralKn(f, s, k));
        expect(couplerLateralKn(f, s, 0)).toBe(0);
      }),
      SEED,
    );
  });

  it('swing: moments about a truck centre close', () => {
    fc.assert(
      fc.property(real(1, 2000), real(0, 0.3), real(12, 25), real(8, 12), (f, alpha, pins, centres) => {
        const truck = couplerSwingLateralKn(f, alpha, pins, centres);
        expect(truck * centres).toBeCloseTo(f * Math.sin(alpha) * pins, 6);
      }),
      SEED,
    );
  });
});

describe('resistance', () => {
  it('grade changes sign with direction, curve does not; more speed never resists less', () => {
    fc.assert(
      fc.property(
        real(20_000, 140_000),
        real(0, 30),
        real(-0.03, 0.03),
        real(0, 0.01),
        (massKg, v, grade, k) => {
          const vehicle = {
            massKg,
            axles: 4,
            speedMs: v,
            grade,
            curvaturePerM: k,
            dragFactor: DRAG_FACTORS.conventional,
          };
          const here = vehicleResistance(vehicle);
          const back = vehicleResistance({ ...vehicle, grade: -grade, curvaturePerM: -k });
          expect(back.gradeKn).toBeCloseTo(-here.gradeKn, 10);
          expect(back.curveKn).toBe(here.curveKn);
          expect(vehicleResistance({ ...vehicle, speedMs: v + 1 }).rollingKn).toBeGreaterThan(here.rollingKn);
        },
      ),
      SEED,
    );
  });
});
