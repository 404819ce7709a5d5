import { standing } from '../../case/current';
import { nameOfEntity } from '../../case/name-of';
import { staticWheelLoadKn, staticWheelLoadMethod } from '../../mechanics/wheel-load';
import { derive, measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';

/** Static wheel load of every vehicle whose weight and axles are known; what is missing for the first derailed. */
export const vehicleLoadFindings = (context: Context): readonly Finding[] =>
  standing(context.record, 'vehicle').flatMap((vehicle): readonly Finding[] => {
    const weight = context.read.take('vehicle', vehicle.id, 'grossWeight');
    const axles = context.read.take('vehicle', vehicle.id, 'axleCount');
    const heading: Heading = {
      part: 'train',
      method: staticWheelLoadMethod,
      what: 'wheelLoad',
      title: `Static wheel load, ${nameOfEntity(context.record, 'vehicle', vehicle)}`,
      subject: { kind: 'vehicle', id: vehicle.id },
    };
    if (weight !== null && axles !== null && axles.value > 0) {
      return [measured(heading, 'force', derive(staticWheelLoadKn, [weight, axles]))];
    }
    if (vehicle.id !== context.first.vehicle?.entity.id) return [];
    return [
      notMeasured(heading, [
        ...(weight === null ? ['gross weight of the first derailed vehicle'] : []),
        ...(axles === null ? ['number of axles of the first derailed vehicle'] : []),
      ]),
    ];
  });
