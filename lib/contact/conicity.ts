import { type Method } from '../findings/finding';
import { ok, refuse, type Result } from '../readings/result';
import { type ContactSetup } from './setup';
import { contactSweep, shiftsBetween, type ContactSweep } from './sweep';

/** Rolling-radius difference (right less left) over lateral shift, mm, with the shifts rising. */
export type RadiusDifference = { readonly shiftMm: Float64Array; readonly differenceMm: Float64Array };

export function radiusDifferenceOf({ states }: ContactSweep): RadiusDifference {
  const rising = [...states].sort((a, b) => a.shiftMm - b.shiftMm);
  return {
    shiftMm: Float64Array.from(rising, (state) => state.shiftMm),
    differenceMm: Float64Array.from(rising, (state) => state.radiusDifferenceMm),
  };
}

/** The amplitude at which one value stands for the whole function (EN 15302; 14363). */
export const NOMINAL_AMPLITUDE_MM = 3;

const QUADRATURE_POINTS = 720;

/**
 * Equivalent conicity at an amplitude (mm, > 0) by integrating the wheelset's free motion:
 * y″ = −Δr(y)/(e·r₀), so that y′² = (2/(e·r₀))·(S(ŷ) − S(y)) with S(y) = ∫ Δr dy; the wavelength is
 * λ = 2·∫ dy/y′ between the turning points, which lie 2·amplitude apart and have the same S; and the
 * conicity is that of the cone with the same wavelength, γ = 2π²·e·r₀/λ² (Klingel). e and r₀ cancel.
 * Between the shifts of the sweep Δr is taken as straight. Refuses where there is no such motion: Δr
 * without a zero where it grows with the shift, a sweep shorter than the motion, or a Δr that drives
 * the wheelset away.
 */
export function equivalentConicityOf(difference: RadiusDifference, amplitudeMm: number): Result<number> {
  if (!(amplitudeMm > 0)) return refuse('Enter an amplitude above 0 mm.');
  const { shiftMm: y, differenceMm: dr } = difference;
  const n = y.length;
  const centre = restingPlace(difference);
  if (centre === null) {
    return refuse(
      'The rolling-radius difference has no zero where it grows with the shift: the wheelset has no middle to swing about, and no equivalent conicity. Sweep further to both sides.',
    );
  }
  const [first, last] = [y[0]!, y[n - 1]!];
  const sum = new Float64Array(n);
  for (let i = 1; i < n; i += 1) sum[i] = sum[i - 1]! + ((dr[i]! + dr[i - 1]!) / 2) * (y[i]! - y[i - 1]!);
  const potential = (at: number): number => integralAt(y, dr, sum, at);

  let low = Math.max(centre, first + 2 * amplitudeMm);
  let high = Math.min(centre + 2 * amplitudeMm, last);
  const uneven = (top: number): number => potential(top) - potential(top - 2 * amplitudeMm);
  if (!(low < high) || uneven(low) > 0 || uneven(high) < 0) {
    return refuse(
      `The sweep does not hold a whole swing of ${amplitudeMm} mm to both sides of ${centre.toFixed(2)} mm. Sweep further, or ask for a smaller amplitude.`,
    );
  }
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (uneven(middle) > 0) high = middle;
    else low = middle;
  }
  const top = (low + high) / 2;
  const middle = top - amplitudeMm;
  const level = potential(top);
  // With y = middle + a·sin θ the ends, where y′ is 0, become ordinary points.
  const dTheta = Math.PI / QUADRATURE_POINTS;
  let halfWave = 0;
  for (let i = 0; i < QUADRATURE_POINTS; i += 1) {
    const theta = -Math.PI / 2 + (i + 0.5) * dTheta;
    const rest = level - potential(middle + amplitudeMm * Math.sin(theta));
    if (!(rest > 0)) {
      return refuse(
        `Within ${amplitudeMm} mm the rolling-radius difference drives the wheelset away from the middle: there is no swing, and no equivalent conicity, at this amplitude.`,
      );
    }
    halfWave += (amplitudeMm * Math.cos(theta) * dTheta) / Math.sqrt(2 * rest);
  }
  return ok((2 * Math.PI * Math.PI) / (4 * halfWave * halfWave));
}

/** The zero of Δr nearest to the middle of the track at which Δr grows. */
function restingPlace({ shiftMm: y, differenceMm: dr }: RadiusDifference): number | null {
  let nearest: number | null = null;
  for (let i = 1; i < y.length; i += 1) {
    const [a, b] = [dr[i - 1]!, dr[i]!];
    if (!(a <= 0 && b >= 0 && b > a)) continue;
    const zero = y[i - 1]! + ((y[i]! - y[i - 1]!) * -a) / (b - a);
    if (nearest === null || Math.abs(zero) < Math.abs(nearest)) nearest = zero;
  }
  return nearest;
}

function integralAt(y: Float64Array, dr: Float64Array, sum: Float64Array, at: number): number {
  let [low, high] = [0, y.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (y[middle]! <= at) low = middle;
    else high = middle;
  }
  const run = at - y[low]!;
  const slope = (dr[high]! - dr[low]!) / (y[high]! - y[low]!);
  return sum[low]! + dr[low]! * run + (slope * run * run) / 2;
}

/** Equivalent conicity of a sweep at an amplitude, mm; see `equivalentConicityOf`. */
export const equivalentConicity = (
  sweep: ContactSweep,
  amplitudeMm: number = NOMINAL_AMPLITUDE_MM,
): Result<number> => equivalentConicityOf(radiusDifferenceOf(sweep), amplitudeMm);

export type ConicityAtAmplitude = { readonly amplitudeMm: number; readonly conicity: Result<number> };

/** Step of the sweep, mm, and the furthest amplitude of the usual curve. */
const SWEEP_STEP_MM = 0.1;
const CURVE_AMPLITUDES_MM = [1, 2, 3, 4, 5, 6, 7];
const ROOM_FOR_REST_MM = 3;

/**
 * Equivalent conicity at each amplitude (mm; 1 to 7 when not given), from the radius-difference function
 * with the roll neglected: the contact of each wheel moves with its shift only, so that a cone gives its
 * own tangent on any rail.
 */
export function conicityCurve(
  setup: ContactSetup,
  amplitudesMm: readonly number[] = CURVE_AMPLITUDES_MM,
): readonly ConicityAtAmplitude[] {
  const reach = Math.max(...amplitudesMm) + ROOM_FOR_REST_MM;
  const sweep = contactSweep(setup, shiftsBetween(-reach, reach, SWEEP_STEP_MM), { roll: 'neglected' });
  const difference = radiusDifferenceOf(sweep);
  return amplitudesMm.map((amplitudeMm) => ({
    amplitudeMm,
    conicity: equivalentConicityOf(difference, amplitudeMm),
  }));
}

export const conicityMethod: Method = {
  id: 'equivalent-conicity',
  name: 'Equivalent conicity',
  formula:
    'γ = 2π²·e·r₀/λ², λ = 2·∫ dy/√((2/(e·r₀))·(S(ŷ) − S(y))) between turning points 2·amplitude apart with the same S, S(y) = ∫ Δr dy. Δr: rolling radius right less left at lateral shift y; e: distance between the contacts, r₀: nominal radius (both cancel).',
  validRange:
    'No yaw, rigid bodies; roll of the axle neglected in Δr. With the roll solved a cone γ on a crown of radius R and contacts e apart gives γ·(1 + 2·R·γ/e) instead, about 2 % more. Stated at an amplitude of 3 mm unless said otherwise.',
  sources: [
    {
      text: 'EN 15302 (integration of the nonlinear differential equation), UIC 519:2004',
      status: 'from memory',
    },
    { text: 'Klingel, 1883 (wavelength of a coned wheelset)', status: 'published' },
  ],
};
