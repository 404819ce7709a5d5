import { couplerAngles, type CurveAlong } from '../../mechanics/coupler-angle';
import { valueOnLine } from '../../train/line-profile';
import type { LineProfile } from './line-profile';
import type { TrainState, VehicleState } from './train-state';

/**
 * Angles of the couplers at both ends of a vehicle, rad, towards the inside of its own curve positive
 * (on tangent: of the curve at the POD), at the lowest and the highest curvature known of the train.
 */
export type Swing = {
  readonly front: readonly [low: number, high: number];
  readonly rear: readonly [low: number, high: number];
};

/** Where the leading pulling face of each vehicle is, m, ahead positive. */
function facesOf(vehicles: readonly VehicleState[]): readonly number[] {
  let next = vehicles[0] === undefined ? 0 : vehicles[0].atPodM + vehicles[0].lengthM / 2;
  if (Number.isNaN(next)) next = 0;
  return vehicles.map(({ lengthM }) => {
    const here = next;
    next -= lengthM;
    return here;
  });
}

/** Curvature under the train, rear end first, at one end of what is known of it. */
function curveUnder(
  vehicles: readonly VehicleState[],
  faces: readonly number[],
  profile: LineProfile['curvature'],
  end: 0 | 1,
): CurveAlong {
  const m: number[] = [];
  const curvaturePerM: number[] = [];
  for (let i = vehicles.length - 1; i >= 0; i -= 1) {
    const { curvature, curvatureOnLine, lengthM } = vehicles[i]!;
    const [rear, front] = [faces[i]! - lengthM, faces[i]!];
    const course = curvatureOnLine ? (profile?.course ?? null) : null;
    const at = (place: number): number =>
      (course === null ? null : valueOnLine(course, place)?.value) ?? curvature[end];
    const within = (course?.nodes ?? []).filter((node) => node.m > rear && node.m < front);
    m.push(rear, ...within.map((node) => node.m), front);
    curvaturePerM.push(at(rear), ...within.map(({ value }) => value), at(front));
  }
  return { m, curvaturePerM };
}

/** How the couplers of every vehicle stand on the line under the train; NaN for one without truck centres. */
export function swingsOf({ vehicles }: TrainState, { curvature }: LineProfile): readonly Swing[] {
  const faces = facesOf(vehicles);
  const curves = ([0, 1] as const).map((end) => curveUnder(vehicles, faces, curvature, end));
  return vehicles.map((vehicle, i): Swing => {
    const hand = Math.sign(vehicle.curvature[0] + vehicle.curvature[1]) || 1;
    const shapeOf = (other: VehicleState | undefined): VehicleState =>
      other !== undefined && other.truckCentresM > 0 ? other : vehicle;
    const ends = (curve: CurveAlong): readonly [front: number, rear: number] => [
      hand * couplerAngles(shapeOf(vehicles[i - 1]), vehicle, curve, faces[i]!)[1],
      hand * couplerAngles(vehicle, shapeOf(vehicles[i + 1]), curve, faces[i]! - vehicle.lengthM)[0],
    ];
    const [low, high] = curves.map(ends);
    return { front: [low![0], high![0]], rear: [low![1], high![1]] };
  });
}
