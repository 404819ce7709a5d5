import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { truckSteering, type TruckInCurve } from '~/lib/mechanics/friction-centre';

/**
 * No published worked example was found. Checked against an independent numerical solution: the
 * three equations of balance (along, across, moments about the middle of the truck) solved for the
 * friction centre and the flange force by Newton's method, with no minimum in them.
 */
function balanced(truck: TruckInCurve): { flange: number; x: number } {
  const { wheelbaseM: b, spacingM: s, verticalsKn, friction, outwardKn, turningKnM } = truck;
  const places = [
    [b / 2, s / 2],
    [b / 2, -s / 2],
    [-b / 2, s / 2],
    [-b / 2, -s / 2],
  ] as const;
  // Unknowns: the centre (cx, cy) from the middle of the truck, outward y positive, and P.
  const residual = ([cx, cy, p]: readonly [number, number, number]): [number, number, number] => {
    let [along, across, moment] = [0, outwardKn - p, -p * (b / 2) + turningKnM];
    places.forEach(([px, py], i) => {
      const [dx, dy] = [px - cx, py - cy];
      const grip = (friction * verticalsKn[i]!) / Math.hypot(dx, dy);
      // Friction acts as a turning of the truck towards the outer rail about the centre.
      const [fx, fy] = [-dy * grip, dx * grip];
      along += fx;
      across += fy;
      moment += px * fy - py * fx;
    });
    return [along, across, moment];
  };
  let at: [number, number, number] = [-b, 0, friction * verticalsKn.reduce((a, c) => a + c, 0)];
  for (let round = 0; round < 200; round += 1) {
    const r = residual(at);
    const step = 1e-6;
    const j = [0, 1, 2].map((k) => {
      const moved = [...at] as [number, number, number];
      moved[k]! += step;
      return residual(moved).map((each, row) => (each - r[row]!) / step);
    });
    // Columns of j are the unknowns; Cramer's rule.
    const det = (a: number[], c: number[], d: number[]): number =>
      a[0]! * (c[1]! * d[2]! - c[2]! * d[1]!) -
      c[0]! * (a[1]! * d[2]! - a[2]! * d[1]!) +
      d[0]! * (a[1]! * c[2]! - a[2]! * c[1]!);
    const whole = det(j[0]!, j[1]!, j[2]!);
    const delta = [det(r, j[1]!, j[2]!), det(j[0]!, r, j[2]!), det(j[0]!, j[1]!, r)].map(
      (each) => each / whole,
    );
    const largest = Math.max(Math.abs(delta[0]!), Math.abs(delta[1]!));
    const damp = Math.min(1, (0.3 * b) / largest);
    at = at.map((each, k) => each - damp * delta[k]!) as [number, number, number];
    if (Math.hypot(...residual(at)) < 1e-10) break;
  }
  expect(Math.hypot(...residual(at))).toBeLessThan(1e-7);
  return { flange: at[2], x: b / 2 - at[0] };
}

const truck = (changes: Partial<TruckInCurve> = {}): TruckInCurve => ({
  wheelbaseM: 1.78,
  spacingM: 1.524,
  verticalsKn: [140, 140, 140, 140],
  friction: 0.4,
  outwardKn: 0,
  turningKnM: 0,
  ...changes,
});

describe('truckSteering against the equations of balance', () => {
  it('agrees for an even truck', () => {
    const solved = balanced(truck());
    const { flangeKn, centreM } = truckSteering(truck());
    expect(flangeKn).toBeCloseTo(solved.flange, 4);
    expect(centreM).toBeCloseTo(solved.x, 2);
  });

  it('agrees for uneven loads, outward forces and turning resistance', () => {
    fc.assert(
      fc.property(
        // A wheel much heavier than the others stands still and becomes the centre: no smooth root there.
        fc.tuple(...[0, 1, 2, 3].map(() => fc.double({ min: 105, max: 150, noNaN: true }))),
        fc.double({ min: -15, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 15, noNaN: true }),
        fc.double({ min: 0.2, max: 0.6, noNaN: true }),
        (verticals, outwardKn, turningKnM, friction) => {
          const asked = truck({
            verticalsKn: verticals as unknown as TruckInCurve['verticalsKn'],
            outwardKn,
            turningKnM,
            friction,
          });
          const { flangeKn } = truckSteering(asked);
          return Math.abs(flangeKn - balanced(asked).flange) < 1e-3 * Math.abs(flangeKn) + 1e-3;
        },
      ),
      { seed: 19, numRuns: 100 },
    );
  });
});

describe('truckSteering', () => {
  it('puts the net of all wheels equal to the outward force, and spreads the rails at the leading axle', () => {
    const { lateralsKn } = truckSteering(truck({ outwardKn: 20 }));
    const [leadOuter, leadInner, trailOuter, trailInner] = lateralsKn;
    expect(leadOuter - leadInner + trailOuter - trailInner).toBeCloseTo(20, 2);
    expect(leadOuter).toBeGreaterThan(0);
    expect(leadInner).toBeGreaterThan(0);
  });

  it('grows in proportion with load and friction, and with turning resistance', () => {
    const one = truckSteering(truck()).flangeKn;
    expect(truckSteering(truck({ friction: 0.2 })).flangeKn).toBeCloseTo(one / 2, 6);
    expect(truckSteering(truck({ verticalsKn: [280, 280, 280, 280] })).flangeKn).toBeCloseTo(2 * one, 6);
    expect(truckSteering(truck({ turningKnM: 8 })).flangeKn).toBeGreaterThan(one);
  });
});
