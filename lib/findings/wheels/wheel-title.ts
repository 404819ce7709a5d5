import { nameOfEntity } from '../../case/name-of';
import type { Entity } from '../../case/record';
import type { Context } from '../context';

/** "axle 1, 23 · XYZ 4512", as it stands in a title. */
export function axleName(context: Context, wheelset: Entity): string {
  const name = nameOfEntity(context.record, 'wheelset', wheelset);
  return name.charAt(0).toLowerCase() + name.slice(1);
}

/** The kind of vehicle a wheelset or truck is under, which decides whose limits hold. */
export function vehicleTypeOf(context: Context, part: Entity): string {
  const vehicle = context.vehicles.get(String(part.fields.vehicle));
  return String(vehicle?.fields.type ?? '');
}

/** Says when and where a part was read, if not as found. */
export function whereReadRemarks(part: Entity): readonly string[] {
  if (part.fields.measuredWhere === 'afterRerailing') return ['Read after re-railing.'];
  return part.fields.measuredWhere === 'shop' ? ['Read in the shop.'] : [];
}

/** Says why a wheel or truck reading is held against no limit. */
export function noLimitsRemarks(context: Context, part: Entity): readonly string[] {
  const { equipment } = context.rules;
  const type = vehicleTypeOf(context, part);
  if (equipment === undefined || type === '') return [];
  return equipment.classes.some((each) => each.vehicleTypes?.includes(type))
    ? []
    : [`${equipment.name} has no limits for this type of vehicle.`];
}
