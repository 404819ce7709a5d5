import type { Method } from '../findings/finding';

/** Wheels in the order leading outer, leading inner, trailing outer, trailing inner. */
export const TRUCK_WHEELS = ['leadingOuter', 'leadingInner', 'trailingOuter', 'trailingInner'] as const;
export type TruckWheel = (typeof TRUCK_WHEELS)[number];
type Four = readonly [number, number, number, number];

export type TruckInCurve = {
  readonly wheelbaseM: number;
  /** Across the track between the wheel contacts. */
  readonly spacingM: number;
  /** Vertical wheel loads, kN, in the order of `TRUCK_WHEELS`. */
  readonly verticalsKn: Four;
  /** Friction of tread on rail, saturated. */
  readonly friction: number;
  /** Net outward force on the truck at its middle: unbalance and couplers, kN. */
  readonly outwardKn: number;
  /** What holds the truck back from turning, kN·m: centre plate and side bearings. */
  readonly turningKnM: number;
};

export type TruckSteering = {
  /** Force of the outer rail on the leading outer flange, kN. */
  readonly flangeKn: number;
  /** How far the friction centre lies behind the leading axle, m. */
  readonly centreM: number;
  /** Lateral force of each wheel on its rail, kN, towards the field side positive. */
  readonly lateralsKn: Four;
};

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Place of the least value of a function with one minimum, by golden section. */
function leastOf(f: (at: number) => number, from: number, to: number, rounds: number): number {
  let [a, b] = [from, to];
  let c = b - GOLDEN * (b - a);
  let d = a + GOLDEN * (b - a);
  let [fc, fd] = [f(c), f(d)];
  for (let i = 0; i < rounds; i += 1) {
    if (fc < fd) {
      [b, d, fd] = [d, c, fc];
      c = b - GOLDEN * (b - a);
      fc = f(c);
    } else {
      [a, c, fc] = [c, d, fd];
      d = a + GOLDEN * (b - a);
      fd = f(d);
    }
  }
  return (a + b) / 2;
}

const X_ROUNDS = 32;
const Y_ROUNDS = 24;
/** Friction centres are looked for between these multiples of the wheelbase behind the leading axle. */
const NEAREST = 0.3;
const FARTHEST = 30;

/**
 * Steering of a rigid two-axle truck that the outer rail guides at its leading outer flange alone,
 * every wheel sliding with full friction at right angles to its distance from the friction centre M.
 * Moments about M: P·x = Σμ·V·r + Q·(x − b/2) + T; lateral balance is the least of P over x, and
 * longitudinal balance the least of Σμ·V·r across the truck. Loads > 0. With forces that would take
 * the flange off the rail `flangeKn` is negative and the result does not hold.
 * Source: friction-centre or minimum method, Heumann, Organ für die Fortschritte des Eisenbahnwesens (1935 and later).
 */
export function truckSteering(truck: TruckInCurve): TruckSteering {
  const { wheelbaseM: b, spacingM, verticalsKn, friction, outwardKn, turningKnM } = truck;
  const half = spacingM / 2;
  const sides = [half, -half, half, -half] as const;
  const grips = verticalsKn.map((vertical) => friction * vertical) as unknown as Four;
  const work = (x: number, y: number): number => {
    let sum = 0;
    for (let i = 0; i < 4; i += 1) {
      const along = i < 2 ? x : x - b;
      const across = sides[i]! - y;
      sum += grips[i]! * Math.sqrt(along * along + across * across);
    }
    return sum;
  };
  const acrossAt = (x: number): number => leastOf((y) => work(x, y), -half, half, Y_ROUNDS);
  const guiding = (x: number): number => (work(x, acrossAt(x)) + outwardKn * (x - b / 2) + turningKnM) / x;
  const logX = leastOf(
    (log) => guiding(Math.exp(log)),
    Math.log(NEAREST * b),
    Math.log(FARTHEST * b),
    X_ROUNDS,
  );
  const x = Math.exp(logX);
  const y = acrossAt(x);
  const flangeKn = guiding(x);
  // Friction pushes each wheel outward and its rail inward: towards the field on the inner rail.
  const laterals = sides.map((side, i) => {
    const along = i < 2 ? x : x - b;
    const lateral = (grips[i]! * along) / Math.hypot(along, side - y);
    return side > 0 ? -lateral : lateral;
  });
  laterals[0] = laterals[0]! + flangeKn;
  return { flangeKn, centreM: x, lateralsKn: laterals as unknown as Four };
}

export const frictionCentreMethod: Method = {
  id: 'friction-centre',
  name: 'Wheel forces of a truck in a curve: friction centre',
  formula:
    'P = min over x of [Σμ·V·r + Q·(x − b/2) + T]/x; r: from each wheel to the friction centre, x behind the leading axle; Q: unbalance and couplers, outward; T: turning resistance of centre plate and side bearings; b: wheelbase. L of the leading outer wheel = P − μ·V·x/r; of the inner one μ·V·x/r towards the field. V = W·g/(2n) ± unbalance ± load off the middle, less what twisted track lifts. Friction grows with the curve to full size at 3 to 6°. Angle of attack = x/R.',
  validRange:
    'Quasi-static, body of a curve, rigid square truck, only the leading outer flange guiding. Truck warp (lozenging), steering by conicity, two-point contact and track irregularities are not in it: short peaks can be much higher.',
  sources: [
    { text: 'Friction-centre or minimum method: Heumann, 1935 and later', status: 'from memory' },
    { text: 'Statics of a stiff car body on two sprung trucks', status: 'published' },
    {
      text: 'Turning resistance from centre-plate friction 0.1 to 0.3 at a radius of 4 to 5 in; curve of full sliding',
      status: 'engineering judgement',
    },
  ],
};
