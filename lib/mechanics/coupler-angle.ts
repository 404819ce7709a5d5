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

/**
 * Angles (rad) that the two couplers joining `ahead` and `behind` make with the centre lines of
 * their cars on a curve, inward positive: the one at the rear of `ahead`, the one at the front of
 * `behind`. Trucks stand centred on the circle; the body is its chord; the joined couplers are one
 * straight bar between the pins. `curvaturePerM` taken without sign; 0 gives zero angles. NaN when the
 * cars do not fit the curve. Cars alike, small angles: S/(2R).
 * Source: plane geometry; law of cosines.
 */
export function couplerAngles(
  ahead: CarShape,
  behind: CarShape,
  curvaturePerM: number,
): readonly [rearOfAhead: number, frontOfBehind: number] {
  const radius = 1 / Math.abs(curvaturePerM);
  if (!Number.isFinite(radius)) return [0, 0];
  const bar = 2 * PIN_TO_FACE_M;
  const at = [ahead, behind].map((car) => {
    const pin = halfPins(car);
    const middle = Math.sqrt(radius * radius - (car.truckCentresM / 2) ** 2);
    return { pinRadius: Math.hypot(middle, pin), toCentre: Math.atan2(middle, pin) };
  });
  const [a, b] = at as [(typeof at)[0], (typeof at)[0]];
  const inward = (own: typeof a, other: typeof a): number => {
    const cosine = (own.pinRadius ** 2 + bar ** 2 - other.pinRadius ** 2) / (2 * own.pinRadius * bar);
    return Math.PI - own.toCentre - Math.acos(cosine);
  };
  return [inward(a, b), inward(b, a)];
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
    'Coupler angles: the bar between the pins of two bodies lying as chords on the curve. L_lead = (T_f·(n + a) − T_r·(n − a))/(2a), T = F·sin α; n: half pin to pin; a: half truck centres. L/V of a truck side: |L|/(W·g/4). Like cars: L = F·S/(2R).',
  validRange:
    'Quasi-static, body of a curve, trucks centred in the gauge, two two-axle trucks, couplers that swing freely up to the angle. In buff the couplers may swing further over: see the jackknife screen.',
  sources: [
    { text: 'Plane geometry and statics', status: 'published' },
    { text: 'Coupler pin to pulling face 33 in', status: 'from memory' },
  ],
};
