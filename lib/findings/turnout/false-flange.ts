import { standing } from '../../case/current';
import type { Entity } from '../../case/record';
import { falseFlangeBelowStockRail, falseFlangeMethod, treadTransfersMm } from '../../turnout/false-flange';
import { derive, distinct, measured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding, Source } from '../finding';
import { limitCheck } from '../limit-check';
import { across } from '../words';
import { pointPlace } from './near-pod';
import { sectionOf, sectionsTaken } from './point-readings';
import { sideOfPoint, wheelAtPoint } from './wheel-at-point';

/** From this hollow on, and twice its uncertainty, the field side of a tread is spoken of as a false flange. */
const SPOKEN_OF_MM = 1;

const CLEAR: Source = {
  text: '49 CFR 213.135(c): the outer edge of the wheel tread must not contact the gauge side of the stock rail',
  status: 'published',
};

/**
 * A false flange of the traced wheel at a turnout near the POD: it acts where the tread passes between
 * stock rail and point, feet behind the tip, or in the trailing direction, not at the tip.
 */
export const falseFlangeFindings = (context: Context): readonly Finding[] =>
  standing(context.record, 'turnout').flatMap((turnout) => ofTurnout(context, turnout));

function ofTurnout(context: Context, turnout: Entity): readonly Finding[] {
  const place = pointPlace(context, turnout);
  const side = sideOfPoint(context, turnout);
  if (!place.counts || side === null) return [];
  const wheel = wheelAtPoint(context, side, turnout);
  if ('missing' in wheel || wheel.hollow === null) return [];
  const { hollow } = wheel;
  if (!(hollow.value > Math.max(SPOKEN_OF_MM, 2 * hollow.u))) return [];
  const sections = sectionsTaken(context, turnout);
  const heading = (what: string, title: string, remarks: readonly string[]): Heading => ({
    part: 'turnout',
    method: falseFlangeMethod,
    what,
    title,
    subject: { kind: 'turnout', id: turnout.id },
    remarks: distinct([place.remark, ...wheel.remarks, ...remarks]),
  });
  const transfersMm = treadTransfersMm(sections.map(sectionOf));
  const found = measured(
    heading('falseFlange', `False flange of the ${side} wheel`, [
      turnout.fields.movement === 'trailing'
        ? 'In the trailing direction it comes at the stock rail from its gauge side.'
        : 'It does not act at the tip, but feet behind it, where the tread passes from the stock rail to the point.',
      transfersMm === null
        ? 'Where that is was not read: the top of the point lies below the stock rail as far back as it was read.'
        : `The tread passes there ${across(transfersMm)} behind the tip.`,
    ]),
    'crossLength',
    hollow,
  );
  const last = sections.at(-1);
  if (last === undefined || last.behindMm === 0) return [found];
  const below = derive(falseFlangeBelowStockRail, [hollow, last.depth]);
  return [
    found,
    measured(
      heading('falseFlangeBelowStockRail', 'False flange below the top of the stock rail', [
        `With the tread on the point ${across(last.behindMm)} behind the tip, the farthest place read.`,
      ]),
      'crossLength',
      below,
      [
        limitCheck({
          name: 'Outer edge of the tread clear of the stock rail',
          citation: '49 CFR 213.135(c)',
          sense: 'max',
          limit: 0,
          value: below.value,
          u: below.u,
          source: CLEAR,
        }),
      ],
    ),
  ];
}
