import { quantityOf } from '../../readings/quantities';
import { asReadMethod } from '../as-read';
import { measured } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';
import { checkAll } from '../rules-in-force';

/** Placarded cars in the train, which excepted track limits; nothing where they were not counted. */
export function exceptedTrackFindings(context: Context): readonly Finding[] {
  const taken = context.read.take('case', context.record.id, 'placardedCars');
  if (taken === null) return [];
  const limits = context.rules.trackLimits('placardedCars');
  return [
    measured(
      {
        part: 'track',
        method: asReadMethod,
        what: 'placardedCars',
        title: quantityOf('placardedCars').name,
        subject: null,
        remarks: context.rules.remarks,
      },
      'count',
      taken,
      checkAll(limits, taken.value, taken.u),
    ),
  ];
}
