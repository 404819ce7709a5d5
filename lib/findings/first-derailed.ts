import { standing } from '../case/current';
import type { CaseRecord, Entity } from '../case/record';
import type { ReadingIndex } from './reading-index';

export type Chosen = { readonly entity: Entity; readonly remark: string };

/** The equipment the mechanisms are computed for; null where the case does not tell. */
export type FirstDerailed = {
  readonly vehicle: Chosen | null;
  readonly wheelset: Chosen | null;
  readonly truck: Chosen | null;
};

/**
 * First derailed vehicle, wheelset and truck, as flagged by the people on the ground. Nothing
 * is guessed from which vehicles lie derailed: the first in the pile is often not the first off.
 */
export function firstDerailed(record: CaseRecord, read: ReadingIndex): FirstDerailed {
  const vehicle = firstVehicle(record);
  const wheelset = vehicle === null ? null : firstWheelset(record, vehicle.entity);
  return { vehicle, wheelset, truck: vehicle === null ? null : firstTruck(record, vehicle, wheelset, read) };
}

const numberIn = (entity: Entity, field: string): number => {
  const value = entity.fields[field];
  return typeof value === 'number' ? value : Infinity;
};

const least = (entities: readonly Entity[], field: string): Entity | undefined =>
  [...entities].sort((a, b) => numberIn(a, field) - numberIn(b, field))[0];

function firstVehicle(record: CaseRecord): Chosen | null {
  const vehicles = standing(record, 'vehicle');
  const flagged = vehicles.filter((vehicle) => vehicle.fields.firstDerailed === true);
  const leading = least(flagged, 'position');
  if (leading !== undefined) {
    return {
      entity: leading,
      remark:
        flagged.length > 1
          ? `${flagged.length} vehicles are marked as first to derail; the leading one is taken.`
          : '',
    };
  }
  const wheelset = standing(record, 'wheelset').find((axle) => axle.fields.firstDerailed === true);
  const owner = vehicles.find((vehicle) => vehicle.id === wheelset?.fields.vehicle);
  return owner === undefined
    ? null
    : { entity: owner, remark: 'Vehicle of the wheelset marked as first to derail.' };
}

function firstWheelset(record: CaseRecord, vehicle: Entity): Chosen | null {
  const own = standing(record, 'wheelset').filter((axle) => axle.fields.vehicle === vehicle.id);
  const flagged = own.filter((axle) => axle.fields.firstDerailed === true);
  const marked = least(flagged, 'axle');
  if (marked !== undefined) {
    return {
      entity: marked,
      remark:
        flagged.length > 1
          ? `${flagged.length} wheelsets are marked as first to derail; the leading one is taken.`
          : '',
    };
  }
  const leading = least(own, 'axle');
  return leading === undefined
    ? null
    : {
        entity: leading,
        remark: `No wheelset is marked as first to derail; axle ${leading.fields.axle ?? '?'}, the leading one measured on the first derailed vehicle, is taken.`,
      };
}

function firstTruck(
  record: CaseRecord,
  vehicle: Chosen,
  wheelset: Chosen | null,
  read: ReadingIndex,
): Chosen | null {
  const trucks = standing(record, 'truck').filter((truck) => truck.fields.vehicle === vehicle.entity.id);
  const axle = wheelset === null ? Infinity : numberIn(wheelset.entity, 'axle');
  if (!Number.isFinite(axle)) return null;
  const counted = read.take('vehicle', vehicle.entity.id, 'axleCount');
  const axles = counted?.value ?? 4;
  const end = axle <= axles / 2 ? 'leading' : 'trailing';
  const truck = trucks.find((each) => each.fields.end === end);
  return truck === undefined
    ? null
    : {
        entity: truck,
        remark: counted === null ? 'Number of axles not recorded: taken as four to find the truck.' : '',
      };
}
