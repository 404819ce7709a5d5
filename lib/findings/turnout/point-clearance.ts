import {
  edgeMarginMm,
  pointClearance,
  pointClearanceMethod,
  type PointClearance,
} from '../../mechanics/point-clearance';
import { distinct, measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import { draw, notBelowZero } from '../draw';
import type { Finding, Source } from '../finding';
import { facingTurnout, pointReading } from '../key-inputs/turnout';
import { allOf } from '../mechanics/from-key-input';
import type { Side } from '../pod-sides';
import type { Taken } from '../reading-index';
import { across, degreesText } from '../words';

const CLEAR: Source = { text: 'Clearance of zero: the flange touches the edge', status: 'published' };

/** Clearance of the first derailed wheelset's flange to the tip of a facing point, and to the floor of a chip. */
export function pointClearanceFindings(context: Context): readonly Finding[] {
  const turnout = facingTurnout(context);
  if (turnout === null) return [];
  const side =
    turnout.fields.pointRead === 'left' || turnout.fields.pointRead === 'right'
      ? turnout.fields.pointRead
      : context.sides.flanging;
  const heading = (what: string, title: string): Heading => ({
    part: 'turnout',
    method: pointClearanceMethod,
    what,
    title,
    subject: { kind: 'turnout', id: turnout.id },
    remarks: distinct([
      'From simple readings, without a trace of wheel or point.',
      side === null ? '' : `Wheel on the ${side} side, against the stock rail of the point that was read.`,
      context.first.wheelset?.remark ?? '',
    ]),
  });
  const tip = heading('pointClearanceTip', 'Clearance of the flange to the tip of the point');
  const chip = heading('pointClearanceChip', 'Clearance of the flange to the floor of the chip');
  if (side === null) return [notMeasured(tip, ['which point was read, left or right'])];
  const needed = allOf({
    gap: [pointReading(context, 'pointGap'), 'gap between point and stock rail at the tip'],
    thickness: [pointReading(context, 'tipThickness'), 'thickness of the tip'],
    depth: [pointReading(context, 'tipDepth'), 'depth of the tip below the stock rail'],
    height: [
      wheelAt(context, 'flangeHeight', side),
      `flange height of the ${side} wheel of the first derailed axle`,
    ],
    angle: [
      wheelAt(context, 'flangeAngle', side),
      `flange angle of the ${side} wheel of the first derailed axle`,
    ],
  });
  if ('missing' in needed) return [notMeasured(tip, needed.missing)];
  const { gap, thickness, depth, height, angle } = needed.all;
  const chipDepth = pointReading(context, 'chipDepth');
  const chipLength = pointReading(context, 'chipLength');
  const inputs: readonly [Taken, ...Taken[]] = [
    gap,
    thickness,
    depth,
    height,
    angle,
    ...(chipDepth === null ? [] : [chipDepth]),
  ];
  const at = (v: ArrayLike<number>): PointClearance =>
    pointClearance(
      {
        gapMm: v[0] ?? NaN,
        tipThicknessMm: v[1] ?? NaN,
        tipDepthMm: v[2] ?? NaN,
        chipDepthMm: Math.max(0, v[5] ?? 0),
        chipLengthMm: chipLength?.value ?? 0,
      },
      {
        flangeHeightMm: v[3] ?? NaN,
        faceAngleRad: v[4] ?? NaN,
        // These set the side play of the axle, which the clearance against the stock rail does not need.
        flangeThicknessMm: NaN,
        oppositeFlangeThicknessMm: NaN,
        backToBackMm: NaN,
        gaugeMm: NaN,
      },
    );
  const asTaken = at(inputs.map(({ value }) => value));
  const tipDrawn = draw((v) => edgeMarginMm(at(v).tip), inputs, context.seed);
  const findings = [
    measured(
      { ...tip, remarks: [...(tip.remarks ?? []), edgeRemark(asTaken.tip)] },
      'crossLength',
      tipDrawn.taken,
      [notBelowZero('Flange clear of the tip', tipDrawn, CLEAR)],
    ),
  ];
  if (asTaken.chip === null) return findings;
  const chipDrawn = draw(
    (v) => {
      const { chip: edge, tip: whole } = at(v);
      return edgeMarginMm(edge ?? whole);
    },
    inputs,
    context.seed,
  );
  return [
    ...findings,
    measured(
      {
        ...chip,
        remarks: [
          ...(chip.remarks ?? []),
          edgeRemark(asTaken.chip),
          chipLength === null
            ? 'How far behind the tip the chip ends was not read.'
            : `Full height is met again ${across(asTaken.fullHeightFromTipMm)} behind the tip.`,
        ],
      },
      'crossLength',
      chipDrawn.taken,
      [notBelowZero('Flange clear of the floor of the chip', chipDrawn, CLEAR)],
    ),
  ];
}

function wheelAt(context: Context, quantity: string, side: Side): Taken | null {
  const { wheelset } = context.first;
  return wheelset === null ? null : context.read.take('wheelset', wheelset.entity.id, quantity, side);
}

const edgeRemark = ({ reachMm, slopeRad }: PointClearance['tip']): string =>
  slopeRad === null
    ? `The flange passes over it by ${across(-reachMm)}.`
    : `The flange reaches ${across(reachMm)} below it and slopes at ${degreesText(slopeRad)} there.`;
