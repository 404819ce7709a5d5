import { unbalanceMm } from '../track/curving-speed';
import { curvatureOfDegrees } from '../track/curvature';
import type { TruckInCurve } from './friction-centre';
import { CONTACT_SPACING_MM, unbalanceLateralKn, unbalanceShiftKn } from './unbalance-load';

const MM_PER_M = 1000;

/** Ranges of what is seldom or never read; engineering judgement. */
export const AXLE_SPACING_M = [1.68, 1.83] as const;
export const CENTRE_PLATE_FRICTION = [0.1, 0.3] as const;
export const CENTRE_PLATE_RADIUS_M = [0.1, 0.127] as const;
/** Curve from which every wheel slides with its full friction: 3 to 6 degrees. */
export const SLIDING_FROM_PER_M = [curvatureOfDegrees(3), curvatureOfDegrees(6)] as const;

/** A four-axle car in the body of a curve, as the forces of one of its trucks are found. */
export type CarInCurve = {
  readonly curvaturePerM: number;
  readonly elevationMm: number;
  readonly speedMs: number;
  /** Static load of one wheel, kN; only ratios follow when it is 1. */
  readonly wheelKn: number;
  readonly friction: number;
  /** Curvature from which the friction is used in full, 1/m. */
  readonly slidingFromPerM: number;
  readonly wheelbaseM: number;
  readonly gravityCentreMm: number;
  /** Centre of gravity off the middle, outward positive, mm. */
  readonly offsetMm: number;
  /** Taken off each outer wheel and put on each inner one by twisted track, kN: side frames share it between the axles. */
  readonly liftedKn: number;
  /** Of the couplers on the truck, towards the inside of the curve, kN. */
  readonly inwardKn: number;
  readonly plateFriction: number;
  readonly plateRadiusM: number;
};

/** A wheel said to carry less than this share has left the rail, and the method with it. */
const LEAST_SHARE = 0.02;
const LEAST_FRICTION = 0.02;

/** Load shifted to each outer wheel by unbalance and by lading off the middle, kN. */
const shiftOf = ({ curvaturePerM, elevationMm, speedMs, wheelKn, gravityCentreMm, offsetMm }: CarInCurve) =>
  unbalanceShiftKn(2 * wheelKn, unbalanceMm(Math.abs(curvaturePerM), speedMs, elevationMm), gravityCentreMm) +
  (2 * wheelKn * offsetMm) / CONTACT_SPACING_MM;

/** Load of either outer wheel before it is held above nothing, kN. */
export const outerWheelKn = (car: CarInCurve): number => car.wheelKn + shiftOf(car) - car.liftedKn;

/**
 * One truck of a car as `truckSteering` takes it: V = V₀ ± unbalance ± load off the middle, less what
 * twisted track lifts; Q = 2·W_axle·Eu/s less the couplers; T = μ_plate·4·V₀·r_plate; friction grows
 * with the curve to its full size. Any loads in kN. Source: statics.
 */
export function carInCurve(car: CarInCurve): TruckInCurve {
  const { wheelKn } = car;
  const kappa = Math.abs(car.curvaturePerM);
  const eu = unbalanceMm(kappa, car.speedMs, car.elevationMm);
  const least = wheelKn * LEAST_SHARE;
  // Whatever is moved across, the axle carries the same.
  const outer = Math.min(2 * wheelKn - least, Math.max(least, outerWheelKn(car)));
  const inner = 2 * wheelKn - outer;
  return {
    wheelbaseM: car.wheelbaseM,
    spacingM: CONTACT_SPACING_MM / MM_PER_M,
    verticalsKn: [outer, inner, outer, inner],
    friction: Math.max(LEAST_FRICTION, car.friction) * Math.min(1, kappa / car.slidingFromPerM),
    outwardKn: 2 * unbalanceLateralKn(2 * wheelKn, eu) - car.inwardKn,
    turningKnM: car.plateFriction * 4 * wheelKn * car.plateRadiusM,
  };
}
