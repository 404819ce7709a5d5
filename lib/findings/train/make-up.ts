import { standing } from '../../case/current';
import type { Entity } from '../../case/record';
import {
  emptiesAheadOfLoads,
  longShortPairs,
  makeUpMethod,
  trailingWeights,
  type MadeUpVehicle,
} from '../../train/make-up';
import { measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';
import { oncePerContext } from '../once-per-context';
import type { NonEmpty } from '../reading-index';
import { massText } from '../words';

export type MadeUp = MadeUpVehicle & { readonly entity: Entity };

const positionOf = ({ fields }: Entity): number =>
  typeof fields.position === 'number' ? fields.position : Infinity;

/** The train as made up, head end first, with what its consist says. */
export const madeUpTrain = oncePerContext((context: Context): readonly MadeUp[] =>
  standing(context.record, 'vehicle')
    .map((entity): MadeUp => {
      const { load, type } = entity.fields;
      const read = (quantity: string): number =>
        context.read.take('vehicle', entity.id, quantity)?.value ?? NaN;
      return {
        entity,
        massKg: read('grossWeight'),
        lengthM: read('lengthOverPullingFaces'),
        load: load === 'empty' || load === 'loaded' || load === 'partLoaded' ? load : 'notSaid',
        locomotive: type === 'locomotive',
      };
    })
    .sort((a, b) => positionOf(a.entity) - positionOf(b.entity)),
);

/** Weight behind every vehicle, by its id, kg; NaN from where a weight behind it is missing. */
export const trailingByVehicle = oncePerContext((context: Context): ReadonlyMap<string, number> => {
  const train = madeUpTrain(context);
  const behind = trailingWeights(train.map(({ massKg }) => massKg));
  return new Map(train.map(({ entity }, i) => [entity.id, behind[i] ?? NaN] as const));
});

const named = ({ entity }: MadeUp): string =>
  `${entity.fields.position ?? '?'} (${[entity.fields.mark, entity.fields.number].filter(Boolean).join(' ')})`;

const MOST_NAMED = 12;
const listed = (texts: readonly string[]): string =>
  texts.length <= MOST_NAMED
    ? texts.join('; ')
    : `${texts.slice(0, MOST_NAMED).join('; ')} and ${texts.length - MOST_NAMED} more`;

/** Long and short cars coupled together, and empty cars ahead of loads with the weight behind them. */
export function makeUpFindings(context: Context): readonly Finding[] {
  const train = madeUpTrain(context);
  if (train.length < 2) return [];
  return [pairs(context, train), ...empties(context, train)];
}

const heading = (what: string, title: string, remarks: readonly string[] = []): Heading => ({
  part: 'train',
  method: makeUpMethod,
  what,
  title,
  subject: null,
  remarks,
});

function pairs(context: Context, train: readonly MadeUp[]): Finding {
  const about = heading('longShortPairs', 'Long and short cars coupled together');
  const lengths = train.flatMap(
    ({ entity }) => context.read.take('vehicle', entity.id, 'lengthOverPullingFaces')?.readings ?? [],
  );
  const [first, ...rest] = lengths;
  const unknown = train.filter(({ lengthM }) => Number.isNaN(lengthM)).length;
  if (first === undefined || unknown > 0)
    return notMeasured(about, [`length over pulling faces of ${unknown} of ${train.length} vehicles`]);
  const found = longShortPairs(train);
  return measured(about, 'count', {
    value: found.length,
    u: 0,
    readings: [first, ...rest],
    remarks:
      found.length === 0
        ? []
        : [`Pairs: ${listed(found.map((i) => `${named(train[i]!)} with ${named(train[i + 1]!)}`))}.`],
  });
}

/** What a consist says of a load is no reading: the weights of the same vehicles stand for it. */
function empties(context: Context, train: readonly MadeUp[]): readonly Finding[] {
  const found = emptiesAheadOfLoads(train);
  const about = heading('emptiesAheadOfLoads', 'Empty cars ahead of loads', [
    'Empty and loaded as the consist says.',
  ]);
  const weights = train.flatMap(
    ({ entity }) => context.read.take('vehicle', entity.id, 'grossWeight')?.readings ?? [],
  );
  const [first, ...rest] = weights;
  const unsaid = train.filter(({ load, locomotive }) => load === 'notSaid' && !locomotive).length;
  if (first === undefined || unsaid > 0)
    return [notMeasured(about, [`load of ${unsaid} of ${train.length} vehicles, and their weights`])];
  const readings: NonEmpty<string> = [first, ...rest];
  const behind = trailingWeights(train.map(({ massKg }) => massKg));
  const most = found.reduce<number | null>(
    (worst, i) => (worst === null || behind[i]! > behind[worst]! ? i : worst),
    null,
  );
  const count = measured(about, 'count', {
    value: found.length,
    u: 0,
    readings,
    remarks:
      found.length === 0
        ? []
        : [
            `Vehicles ${listed(found.map((i) => named(train[i]!)))}.`,
            ...(most !== null && Number.isFinite(behind[most]!)
              ? [`Most weight behind one of them: ${massText(behind[most]!)} behind ${named(train[most]!)}.`]
              : []),
          ],
  });
  return [count];
}
