import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cantedArms, fastenedRolloverLimit, rolloverLimit, rolloverMoments } from '~/lib/mechanics/rollover';
import { BEARING_PLACES, leverArms } from '~/lib/rail/lever-arms';
import { RAIL_SECTIONS } from '~/lib/rail/sections';

const SEED = { seed: 6224 };
const arms = fc.record({
  dMm: fc.double({ min: 30, max: 130, noNaN: true }),
  hMm: fc.double({ min: 120, max: 200, noNaN: true }),
});
const cant = fc.double({ min: -0.1, max: 0.1, noNaN: true });
const load = fc.double({ min: 10, max: 200, noNaN: true });

describe('rollover', () => {
  it('cant turns the arms: lengths stay, and the limit is tan(atan(d/h) + β)', () => {
    fc.assert(
      fc.property(arms, cant, (a, beta) => {
        const turned = cantedArms(a, beta);
        expect(Math.hypot(turned.dMm, turned.hMm)).toBeCloseTo(Math.hypot(a.dMm, a.hMm), 8);
        expect(rolloverLimit(a, beta)).toBeCloseTo(Math.tan(Math.atan2(a.dMm, a.hMm) + beta), 9);
      }),
      SEED,
    );
  });

  it('inward cant, a wider bearing and fasteners help; each alone', () => {
    fc.assert(
      fc.property(arms, cant, load, (a, beta, v) => {
        expect(rolloverLimit(a, beta + 0.01)).toBeGreaterThan(rolloverLimit(a, beta));
        expect(rolloverLimit({ ...a, dMm: a.dMm + 1 }, beta)).toBeGreaterThan(rolloverLimit(a, beta));
        expect(fastenedRolloverLimit(a, beta, 0, v)).toBe(rolloverLimit(a, beta));
        expect(fastenedRolloverLimit(a, beta, 2, v)).toBeGreaterThan(rolloverLimit(a, beta));
      }),
      SEED,
    );
  });

  it('at the limit the moments balance, for one wheel or a truck side, with and without fasteners', () => {
    fc.assert(
      fc.property(
        arms,
        cant,
        load,
        load,
        fc.double({ min: 0, max: 20, noNaN: true }),
        (a, beta, v1, v2, m) => {
          const limit = fastenedRolloverLimit(a, beta, m, v1 + v2);
          const moments = rolloverMoments(
            [
              { lateralKn: limit * (v1 + v2), verticalKn: v1, arms: a },
              { lateralKn: 0, verticalKn: v2, arms: a },
            ],
            beta,
            m,
          );
          expect(moments.overturningKnM / moments.restoringKnM).toBeCloseTo(1, 9);
          expect(moments.lateralOverVertical).toBeCloseTo(limit, 9);
        },
      ),
      SEED,
    );
  });

  it('the farther to the field the wheel bears, the easier the rail rolls; tread friction rolls it easier still', () => {
    for (const section of RAIL_SECTIONS) {
      const limits = BEARING_PLACES.map((place) => rolloverLimit(leverArms(section, place, 'gaugeFace'), 0));
      expect(
        [...limits].sort((a, b) => b - a),
        section.id,
      ).toEqual(limits);
      for (const place of BEARING_PLACES) {
        expect(rolloverLimit(leverArms(section, place, 'topOfRail'), 0)).toBeLessThan(
          rolloverLimit(leverArms(section, place, 'gaugeFace'), 0),
        );
        // A worn head is lower, and a lower push turns the rail less.
        expect(leverArms(section, place, 'topOfRail', 8).hMm).toBe(section.heightMm - 8);
      }
    }
  });
});
