import { standing } from '../../case/current';
import { nameOfEntity } from '../../case/name-of';
import { quantityOf } from '../../readings/quantities';
import { asReadMethod } from '../as-read';
import { distinct, measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';
import { railPlaceM } from '../rail-place';
import { LEFT_OUT_WORDS } from '../reading-state';

const QUANTITIES = [
  'verticalLoss',
  'gaugeFaceLoss',
  'gaugeFaceAngle',
  'railCant',
  'gaugeFaceFriction',
  'topOfRailFriction',
  'gaugeSpikesDrawn',
  'fasteningsMissing',
  'plateCut',
] as const;

/** Wear, angles, friction and hold of each rail recorded. No public rule sets limits on them. */
export const railReadingFindings = (context: Context): readonly Finding[] =>
  standing(context.record, 'rail').flatMap((rail) => {
    const name = nameOfEntity(context.record, 'rail', rail);
    const unplaced = railPlaceM(context, String(rail.fields.where ?? '')) === null;
    return QUANTITIES.flatMap((id): readonly Finding[] => {
      const quantity = quantityOf(id);
      const heading: Heading = {
        part: 'rails',
        method: asReadMethod,
        what: id,
        title: `${quantity.name}, ${name}`,
        subject: { kind: 'rail', id: rail.id },
        remarks: distinct(unplaced ? ['Its distance from the POD could not be told from “Where”.'] : []),
      };
      const taken = context.read.take('rail', rail.id, id);
      if (taken !== null) {
        return [
          measured(
            { ...heading, method: taken.method ?? asReadMethod },
            quantity.kind === 'measure' ? quantity.dimension : 'count',
            taken,
          ),
        ];
      }
      const why = context.read.leftOut('rail', rail.id, id);
      return why === null
        ? []
        : [
            notMeasured(heading, [
              `${quantity.name.toLowerCase()} undisturbed; read only ${LEFT_OUT_WORDS[why]}`,
            ]),
          ];
    });
  });
