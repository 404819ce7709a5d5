import { standing } from '../../case/current';
import type { Entity } from '../../case/record';
import { derive, measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding, Method } from '../finding';

export const tonnageMethod: Method = {
  id: 'tonnage',
  name: 'Weight of a train or of a part of it',
  formula: 'sum of the gross weights of the vehicles',
  validRange: 'Every vehicle of the part weighed or billed: with one missing there is no sum.',
  sources: [{ text: 'Addition', status: 'published' }],
};

/** Weight of the train and of what was behind the first derailed vehicle. */
export function tonnageFindings(context: Context): readonly Finding[] {
  const vehicles = standing(context.record, 'vehicle');
  if (vehicles.length === 0) return [];
  const first = context.first.vehicle?.entity;
  const behind = first === undefined ? [] : vehicles.filter((each) => position(each) > position(first));
  return [
    summed(context, 'trainWeight', 'Weight of the train', vehicles),
    ...(behind.length === 0
      ? []
      : [summed(context, 'trailingWeight', 'Weight behind the first derailed vehicle', behind)]),
  ];
}

const position = ({ fields }: Entity): number =>
  typeof fields.position === 'number' ? fields.position : NaN;

function summed(context: Context, what: string, title: string, vehicles: readonly Entity[]): Finding {
  const heading: Heading = { part: 'train', method: tonnageMethod, what, title, subject: null };
  const weights = vehicles.flatMap(({ id }) => context.read.take('vehicle', id, 'grossWeight') ?? []);
  const [head, ...rest] = weights;
  if (head === undefined || weights.length < vehicles.length) {
    return notMeasured(heading, [
      `gross weight of ${vehicles.length - weights.length} of ${vehicles.length} vehicles`,
    ]);
  }
  return measured(
    { ...heading, remarks: [`Of ${vehicles.length} vehicles.`] },
    'mass',
    derive((...all) => all.reduce((sum, weight) => sum + weight, 0), [head, ...rest]),
  );
}
