import type { LoadedCase } from '~/app/case.server';
import type { Entity } from '~/lib/case/record';

const number = (value: unknown): number => (typeof value === 'number' ? value : Infinity);

/** Order of wheelsets and trucks: what came off first, then along the train, then along the vehicle. */
export function inTrainOrder({ record }: LoadedCase): (a: Entity, b: Entity) => number {
  const vehicles = new Map(record.entities.vehicle.map((vehicle) => [vehicle.id, vehicle.fields]));
  const rank = ({ fields }: Entity): readonly number[] => {
    const vehicle = vehicles.get(String(fields.vehicle));
    return [
      fields.firstDerailed === true ? 0 : 1,
      vehicle?.firstDerailed === true ? 0 : 1,
      number(vehicle?.position),
      fields.end === 'trailing' ? 1 : 0,
      number(fields.axle),
    ];
  };
  return (a, b) => {
    const [left, right] = [rank(a), rank(b)];
    const at = left.findIndex((value, index) => value !== right[index]);
    return at < 0 ? 0 : (left[at] ?? 0) - (right[at] ?? 0);
  };
}
