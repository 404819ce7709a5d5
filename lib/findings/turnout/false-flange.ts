import { standing } from '../../case/current';
import type { Entity } from '../../case/record';
import { falseFlangeBelowStockRail, falseFlangeMethod, treadTransfersMm } from '../../turnout/false-flange';
import { derive, distinct, measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding, Source } from '../finding';
import { limitCheck } from '../limit-check';
import { across } from '../words';
import { pointPlace } from './near-pod';
import type { Side } from '../pod-sides';
import type { Taken } from '../reading-index';
import { placesRead } from './point-readings';
import { sideOfPoint, wheelAtPoint } from './wheel-at-point';

/** From this hollow on, and twice its uncertainty, the field side of a tread is spoken of as a false flange. */
const SPOKEN_OF_MM = 1;

const CLEAR: Source = {
  text: '49 CFR 213.135(c): the outer edge of the wheel tread must not contact the gauge side of the stock rail',
  status: 'published',
};

/**
 * At a turnout near the POD: a false flange of the traced wheel, which acts where the tread passes between
 * stock rail and point, feet behind the tip, or in the trailing direction, not at the tip; and whether the
 * outer edge of a tread on the point lies clear of the stock rail, as 49 CFR 213.135(c) asks.
 */
export const falseFlangeFindings = (context: Context): readonly Finding[] =>
  standing(context.record, 'turnout').flatMap((turnout) => ofTurnout(context, turnout));

function ofTurnout(context: Context, turnout: Entity): readonly Finding[] {
  const place = pointPlace(context, turnout);
  const side = sideOfPoint(context, turnout);
  if (!place.counts || side === null) return [];
  const wheel = wheelAtPoint(context, side, turnout);
  const depths = placesRead(context, turnout).flatMap(({ behindMm, depth }) =>
    depth === null ? [] : [{ behindMm, depth, depthMm: depth.value }],
  );
  const transfersMm = treadTransfersMm(depths);
  const about: About = {
    side,
    transfersMm,
    heading: (what, title, remarks) => ({
      part: 'turnout',
      method: falseFlangeMethod,
      what,
      title,
      subject: { kind: 'turnout', id: turnout.id },
      remarks: distinct([place.remark, ...remarks]),
    }),
  };
  const traced =
    'missing' in wheel || wheel.hollow === null ? null : { hollow: wheel.hollow, remarks: wheel.remarks };
  return [
    ...spokenOf(about, traced, turnout.fields.movement === 'trailing'),
    ...edgeOfTread(about, traced?.hollow ?? hollowRead(context, side), depths.at(-1) ?? null),
  ];
}

type About = {
  readonly side: Side;
  /** Where the tread passes from the stock rail to the point, mm behind the tip; null where that was not read. */
  readonly transfersMm: number | null;
  readonly heading: (what: string, title: string, remarks: readonly string[]) => Heading;
};

function hollowRead({ first, read }: Context, side: Side): Taken | null {
  const wheelset = first.wheelset?.entity.id;
  return wheelset === undefined ? null : read.take('wheelset', wheelset, 'treadHollow', side);
}

/** A false flange worth speaking of, with where it acts. */
function spokenOf(
  { side, transfersMm, heading }: About,
  traced: { readonly hollow: Taken; readonly remarks: readonly string[] } | null,
  trailing: boolean,
): readonly Finding[] {
  if (traced === null || !(traced.hollow.value > Math.max(SPOKEN_OF_MM, 2 * traced.hollow.u))) return [];
  return [
    measured(
      heading('falseFlange', `False flange of the ${side} wheel`, [
        ...traced.remarks,
        trailing
          ? 'In the trailing direction it comes at the stock rail from its gauge side.'
          : 'It does not act at the tip, but feet behind it, where the tread passes from the stock rail to the point.',
        transfersMm === null
          ? 'Where that is was not read: the top of the point lies below the stock rail as far back as it was read.'
          : `The tread passes there ${across(transfersMm)} behind the tip.`,
      ]),
      'crossLength',
      traced.hollow,
    ),
  ];
}

/** Held against the stock rail only where the point carries the tread; before that the stock rail does. */
function edgeOfTread(
  { side, transfersMm, heading }: About,
  hollow: Taken | null,
  last: { readonly behindMm: number; readonly depth: Taken } | null,
): readonly Finding[] {
  if (last === null || last.behindMm === 0) return [];
  const named = heading(
    'falseFlangeBelowStockRail',
    'Outer edge of the tread below the top of the stock rail',
    [`With the tread on the point ${across(last.behindMm)} behind the tip, the farthest place read.`],
  );
  const missing = [
    ...(transfersMm === null
      ? [
          'the top of the point where it carries the wheel: read its depth farther back, until it is level with the stock rail or above it',
        ]
      : []),
    ...(hollow === null
      ? [`hollow of the tread of the ${side} wheel, read or traced out to its field side`]
      : []),
  ];
  if (hollow === null || missing.length > 0) return [notMeasured(named, missing)];
  const below = derive(falseFlangeBelowStockRail, [hollow, last.depth]);
  return [
    measured(named, 'crossLength', below, [
      limitCheck({
        name: 'Outer edge of the tread clear of the stock rail',
        citation: '49 CFR 213.135(c)',
        sense: 'max',
        limit: 0,
        value: below.value,
        u: below.u,
        source: CLEAR,
      }),
    ]),
  ];
}
