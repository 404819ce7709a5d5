import type { Method } from '../findings/finding';

/** From coupler pin to pulling face, m: about 33 in for an ordinary coupler; from memory. */
export const PIN_TO_FACE_M = 0.84;

export type CarShape = {
  readonly truckCentresM: number;
  /** Over pulling faces. */
  readonly lengthM: number;
};

/** Half the length between the coupler pins of a car, m. */
const halfPins = ({ lengthM }: CarShape): number => lengthM / 2 - PIN_TO_FACE_M;

/** Curvature along the line, 1/m, straight between places in rising order, m ahead positive; two at one place are a step. */
export type CurveAlong = { readonly m: readonly number[]; readonly curvaturePerM: readonly number[] };

/** Curvature at a place within `from` and the next node. */
function between({ m, curvaturePerM }: CurveAlong, from: number, at: number): number {
  const span = m[from + 1]! - m[from]!;
  const share = span > 0 ? (at - m[from]!) / span : 0;
  return curvaturePerM[from]! + share * (curvaturePerM[from + 1]! - curvaturePerM[from]!);
}

/**
 * Offset of the track at `to` from its tangent at `origin`, m: ∫(to − s)·κ(s) ds, exact for curvature
 * straight between nodes (Simpson’s rule on a quadratic). Beyond the nodes their last curvature holds.
 */
export function offsetAlong(curve: CurveAlong, origin: number, to: number): number {
  const { m, curvaturePerM } = curve;
  if (m.length === 0) return 0;
  const [low, high] = [Math.min(origin, to), Math.max(origin, to)];
  let sum = 0;
  const add = (a: number, b: number, at: (s: number) => number): void => {
    if (b <= a) return;
    const mid = (a + b) / 2;
    sum += ((b - a) / 6) * ((to - a) * at(a) + 4 * (to - mid) * at(mid) + (to - b) * at(b));
  };
  add(low, Math.min(high, m[0]!), () => curvaturePerM[0]!);
  for (let i = 0; i + 1 < m.length; i += 1)
    add(Math.max(low, m[i]!), Math.min(high, m[i + 1]!), (s) => between(curve, i, s));
  add(Math.max(low, m.at(-1)!), high, () => curvaturePerM.at(-1)!);
  return to < origin ? -sum : sum;
}

/**
 * Angles (rad) that the two couplers joining `ahead` and `behind`, whose pulling faces meet at `atM`,
 * make with the centre lines of their cars, towards the inside of positive curvature positive: the one
 * at the rear of `ahead`, the one at the front of `behind`. Curvature may change along the line, over a
 * reverse curve too. Bodies are chords between truck centres; the joined couplers are one straight bar
 * between the pins; small angles. Cars alike on one curve: S/(2R). Source: plane geometry.
 */
export function couplerAngles(
  ahead: CarShape,
  behind: CarShape,
  curve: CurveAlong,
  atM: number,
): readonly [rearOfAhead: number, frontOfBehind: number] {
  const body = (car: CarShape, middleM: number) => {
    const half = car.truckCentresM / 2;
    const front = offsetAlong(curve, atM, middleM + half);
    const rear = offsetAlong(curve, atM, middleM - half);
    return { centre: (front + rear) / 2, slope: (front - rear) / car.truckCentresM };
  };
  const a = body(ahead, atM + ahead.lengthM / 2);
  const b = body(behind, atM - behind.lengthM / 2);
  const rearPin = a.centre - a.slope * halfPins(ahead);
  const frontPin = b.centre + b.slope * halfPins(behind);
  const bar = (rearPin - frontPin) / (2 * PIN_TO_FACE_M);
  return [a.slope - bar, bar - b.slope];
}

/** What pulls a car sideways at one end: the coupler force (draft positive) and its angle inward. */
export type CarEnd = { readonly forceKn: number; readonly angleRad: number };

/**
 * Lateral force (kN, inward positive) of the body on its leading and trailing truck, from the
 * coupler forces at both ends: ΣF = 0 and ΣM = 0 for a body carried by two trucks,
 * L_lead = (T_f·(n + a) − T_r·(n − a))/(2a), T = F·sin α, n: half pin to pin, a: half truck centres.
 * Source: statics.
 */
export function truckLateralsKn(
  car: CarShape,
  front: CarEnd,
  rear: CarEnd,
): readonly [leading: number, trailing: number] {
  const n = halfPins(car);
  const a = car.truckCentresM / 2;
  const f = front.forceKn * Math.sin(front.angleRad);
  const r = rear.forceKn * Math.sin(rear.angleRad);
  return [(f * (n + a) - r * (n - a)) / (2 * a), (r * (n + a) - f * (n - a)) / (2 * a)];
}

export const couplerAngleMethod: Method = {
  id: 'coupler-angle',
  name: 'Truck lateral force from coupler forces of unlike cars in a curve',
  formula:
    'Coupler angles: the bar between the pins of two bodies lying as chords on the track, whose offset from its tangent is ∫(s′ − s)·κ(s) ds. L_lead = (T_f·(n + a) − T_r·(n − a))/(2a), T = F·sin α; n: half pin to pin; a: half truck centres. L/V of a truck side: |L|/(W·g/4). Like cars: L = F·S/(2R).',
  validRange:
    'Quasi-static, small angles, trucks centred in the gauge, two two-axle trucks, couplers that swing freely up to the angle. Curves, reverse curves and the tangent between them as far as the curvature under each vehicle is known; each vehicle’s curvature is taken over its whole length unless the profile of the line says it closer. A car without truck centres is taken by F·S/(2R) on its own curve, and its neighbours as if it were like them. In buff the couplers may swing further over: see the jackknife screen.',
  sources: [
    { text: 'Plane geometry and statics', status: 'published' },
    { text: 'Coupler pin to pulling face 33 in', status: 'from memory' },
  ],
};
