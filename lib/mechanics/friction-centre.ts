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

const MOST_ROUNDS = 26;
const SETTLED = 1e-9;

/** Friction centres are looked for between these multiples of the wheelbase behind the leading axle. */
const NEAREST = 0.3;
const FARTHEST = 30;

/** Where `sumOver` leaves Σμ·V·r and its slopes; numbers of a typed array cost nothing to keep. */
const SUM = new Float64Array(6);
const [WORK, BY_X, BY_Y, BY_XX, BY_XY, BY_YY] = [0, 1, 2, 3, 4, 5] as const;

/** Σμ·V·r and its slopes by the place of the friction centre, x behind the leading axle and y across, into `SUM`. */
function sumOver(grips: Four, half: number, wheelbaseM: number, x: number, y: number): void {
  let work = 0;
  let byX = 0;
  let byY = 0;
  let byXX = 0;
  let byXY = 0;
  let byYY = 0;
  for (let i = 0; i < 4; i += 1) {
    const along = i < 2 ? x : x - wheelbaseM;
    const across = i % 2 === 0 ? y - half : y + half;
    const r = Math.sqrt(along * along + across * across);
    if (r === 0) continue;
    const grip = grips[i]!;
    const c = along / r;
    const s = across / r;
    work += grip * r;
    byX += grip * c;
    byY += grip * s;
    byXX += (grip * s * s) / r;
    byXY -= (grip * c * s) / r;
    byYY += (grip * c * c) / r;
  }
  SUM[WORK] = work;
  SUM[BY_X] = byX;
  SUM[BY_Y] = byY;
  SUM[BY_XX] = byXX;
  SUM[BY_XY] = byXY;
  SUM[BY_YY] = byYY;
}

/**
 * A trailing wheel loaded so much more than the others that it does not slide and is itself the
 * friction centre: with it left out, what the others and the flange ask of it is less than it holds.
 */
function standingWheel(
  grips: Four,
  half: number,
  { wheelbaseM: b, outwardKn, turningKnM }: TruckInCurve,
): 2 | 3 | null {
  for (const wheel of [2, 3] as const) {
    sumOver(grips, half, b, b, wheel === 2 ? half : -half);
    const flange = (SUM[WORK]! + (outwardKn * b) / 2 + turningKnM) / b;
    if (Math.hypot(SUM[BY_X]! + outwardKn - flange, SUM[BY_Y]!) <= grips[wheel]) return wheel;
  }
  return null;
}

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
  const total = grips[0] + grips[1] + grips[2] + grips[3];
  const at = (x: number, y: number): void => sumOver(grips, half, b, x, y);
  /** Longitudinal balance: where byY is none, by Newton's rule held within what is known of it. */
  const balanceAcross = (x: number, start: number): number => {
    let low = -half;
    let high = half;
    let y = start;
    for (let round = 0; round < MOST_ROUNDS; round += 1) {
      at(x, y);
      const byY = SUM[BY_Y]!;
      if (Math.abs(byY) <= SETTLED * total) break;
      if (byY > 0) high = y;
      else low = y;
      const by = y - byY / SUM[BY_YY]!;
      const next = by > low && by < high ? by : (low + high) / 2;
      if (Math.abs(next - y) < SETTLED) break;
      y = next;
    }
    return y;
  };
  /*
   * P(x) = (Σμ·V·r + Q·(x − b/2) + T)/x is least where x·∂Σ/∂x − Σ + Q·b/2 − T is none; that
   * grows with x, for Σμ·V·r is convex.
   */
  const constant = (outwardKn * b) / 2 - turningKnM;
  let y = 0;
  const offAt = (place: number): number => {
    y = balanceAcross(place, y);
    return place * SUM[BY_X]! - SUM[WORK]! + constant;
  };
  const standing = standingWheel(grips, half, truck);
  let x = b;
  if (standing === null) {
    let low = NEAREST * b;
    let high = FARTHEST * b;
    x = offAt(high) <= 0 ? high : offAt(low) >= 0 ? low : b;
    for (let round = 0; round < MOST_ROUNDS && x !== low && x !== high; round += 1) {
      const off = offAt(x);
      if (Math.abs(off) <= SETTLED * (total * b + Math.abs(constant))) break;
      if (off > 0) high = x;
      else low = x;
      const byYY = SUM[BY_YY]!;
      const slope = x * (SUM[BY_XX]! - (byYY > 0 ? SUM[BY_XY]! ** 2 / byYY : 0));
      const by = x - off / slope;
      const next = by > low && by < high ? by : Math.sqrt(low * high);
      if (Math.abs(next - x) < SETTLED * x) break;
      x = next;
    }
    y = balanceAcross(x, y);
  } else {
    y = sides[standing];
    at(x, y);
  }
  const flangeKn = (SUM[WORK]! + outwardKn * (x - b / 2) + turningKnM) / x;
  // Friction pushes each wheel outward and its rail inward: towards the field on the inner rail.
  const laterals = sides.map((side, i) => {
    if (i === standing) return 0;
    const along = i < 2 ? x : x - b;
    const lateral = (grips[i]! * along) / Math.hypot(along, side - y);
    return side > 0 ? -lateral : lateral;
  });
  laterals[0] = laterals[0]! + flangeKn;
  if (standing !== null) {
    const net = laterals[0]! - laterals[1]! + laterals[2]! - laterals[3]!;
    laterals[standing] = Math.sign(sides[standing]) * (outwardKn - net);
  }
  return { flangeKn, centreM: x, lateralsKn: laterals as unknown as Four };
}

export const frictionCentreMethod: Method = {
  id: 'friction-centre',
  name: 'Wheel forces of a truck in a curve: friction centre',
  formula:
    'P = min over x of [Σμ·V·r + Q·(x − b/2) + T]/x; r: from each wheel to the friction centre, x behind the leading axle; Q: unbalance and couplers, outward; T: turning resistance of centre plate and side bearings; b: wheelbase. L of the leading outer wheel = P − μ·V·x/r; of the inner one μ·V·x/r towards the field. V = W·g/(2n) ± unbalance ± load off the middle, less what twisted track takes off (see there). Friction grows with the curve to full size at 3 to 6°. Angle of attack = x/R.',
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
