import { describe, expect, it } from 'vitest';
import { truckSteering, type TruckInCurve } from '~/lib/mechanics/friction-centre';
import solved from './friction-centre.json';

/**
 * No published worked example with all its numbers was found. Compared with the three equations of
 * balance solved by SciPy (friction-centre.py), in which nothing is minimised.
 */
describe('friction centre against an independent numerical solution', () => {
  for (const { flangeKn, centreM, lateralsKn, verticalsKn, ...rest } of solved.cases) {
    it(`μ ${rest.friction}, loads ${verticalsKn.join(', ')} kN, ${rest.outwardKn} kN outward, ${rest.turningKnM} kN·m`, () => {
      const found = truckSteering({
        ...rest,
        verticalsKn: verticalsKn as unknown as TruckInCurve['verticalsKn'],
      });
      expect(Math.abs(found.flangeKn / flangeKn - 1)).toBeLessThan(1e-4);
      // The minimum is flat about its place, which is therefore known less closely than the force.
      expect(Math.abs(found.centreM / centreM - 1)).toBeLessThan(0.01);
      found.lateralsKn.forEach((each, i) =>
        expect(Math.abs(each - (lateralsKn[i] ?? NaN))).toBeLessThan(0.005 * flangeKn),
      );
    });
  }
});
