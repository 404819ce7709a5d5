import type { LinePoint } from '../../mechanics/train-drive';
import type { LineCourse, LineProfile } from './line-profile';
import type { VehicleState } from './train-state';

type Node = { readonly m: number; readonly value: number };

/** Vehicles where they stood, and the profile where no vehicle stands that was entered by itself. */
function nodesOf(
  vehicles: readonly VehicleState[],
  line: LineCourse | null,
  valueOf: (vehicle: VehicleState) => number,
  isOnLine: (vehicle: VehicleState) => boolean,
): readonly Node[] {
  const apart = vehicles.filter((vehicle) => !isOnLine(vehicle));
  const covered = ({ m }: Node): boolean =>
    apart.some(({ atPodM, lengthM }) => Math.abs(m - atPodM) <= lengthM / 2);
  const own = vehicles.map((vehicle): Node => ({ m: vehicle.atPodM, value: valueOf(vehicle) }));
  const nodes = (line?.course.nodes ?? []).filter((node) => !covered(node));
  return [...own, ...nodes].sort((a, b) => a.m - b.m);
}

/** What the nodes say just before and just after a place; their last value beyond the ends. */
function around(nodes: readonly Node[], m: number): readonly [before: number, after: number] {
  const here = nodes.filter((node) => node.m === m);
  const [first, last] = [here[0], here.at(-1)];
  if (first !== undefined && last !== undefined) return [first.value, last.value];
  const next = nodes.findIndex((node) => node.m > m);
  if (next === 0) return [nodes[0]!.value, nodes[0]!.value];
  const before = nodes.at(next < 0 ? -1 : next - 1)!;
  if (next < 0) return [before.value, before.value];
  const after = nodes[next]!;
  const value = before.value + ((m - before.m) / (after.m - before.m)) * (after.value - before.value);
  return [value, value];
}

const middle = ([low, high]: readonly [number, number]): number => (low + high) / 2;

/** The track that the train ran over, under it at the POD and, as far as the line's profile reaches, before and beyond. */
export function lineUnderTrain(
  vehicles: readonly VehicleState[],
  profile: LineProfile,
): readonly LinePoint[] {
  const grade = nodesOf(
    vehicles,
    profile.grade,
    (vehicle) => vehicle.grade.value,
    (vehicle) => vehicle.gradeOnLine,
  );
  const curvature = nodesOf(
    vehicles,
    profile.curvature,
    (vehicle) => middle(vehicle.curvature),
    (vehicle) => vehicle.curvatureOnLine,
  );
  const places = [...new Set([...grade, ...curvature].map(({ m }) => m))].sort((a, b) => a - b);
  return places.flatMap((m): readonly LinePoint[] => {
    const [g, c] = [around(grade, m), around(curvature, m)];
    const before = { m, grade: g[0], curvaturePerM: c[0] };
    const after = { m, grade: g[1], curvaturePerM: c[1] };
    return g[0] === g[1] && c[0] === c[1] ? [before] : [before, after];
  });
}
