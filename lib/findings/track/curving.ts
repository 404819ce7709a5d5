import {
  balanceElevationMm,
  balanceSpeedMs,
  curvingSpeedMethod,
  maximumCurvingSpeedMs,
  QUALIFIED_UNBALANCE_MM,
  unbalanceMm,
} from '../../track/curving-speed';
import { segmentAverageMethod } from '../../track/deviation';
import { measured, notMeasured, outOfRange, remarked, type Heading } from '../build';
import type { Context } from '../context';
import { draw } from '../draw';
import type { Finding, LimitCheck } from '../finding';
import { limitCheck } from '../limit-check';
import { oncePerContext } from '../once-per-context';
import type { Taken } from '../reading-index';
import { stationColumn } from '../station-column';
import { fromCanonical } from '../../readings/convert';
import type { Dimension } from '../../readings/unit';
import { percent } from '../words';
import { podAverage } from './curvature';
import { stationCurvatures } from './station-curvatures';
import { standingCrosslevel } from './warp';

export type CurveAtPod = {
  readonly curvature: Taken | null;
  readonly elevation: Taken | null;
  readonly speed: Taken | null;
};

/** Averages at the POD and the speed there, as every speed computation takes them. */
export const curveAtPod = oncePerContext((context: Context): CurveAtPod => {
  const curvature = podAverage(context, stationCurvatures(context));
  const elevation = podAverage(context, standingCrosslevel(context));
  return {
    curvature: curvature && remarked(curvature.taken, curvature.remark),
    elevation: elevation && remarked(elevation.taken, elevation.remark),
    speed: context.speedAtPod,
  };
});

const NEEDED: Readonly<Record<keyof CurveAtPod, string>> = {
  curvature: 'curvature at the POD',
  elevation: 'crosslevel at undisturbed stations near the POD',
  speed: 'speed at the POD',
};

/** Cant deficiency the equipment may run at: 3 in, or what it is qualified for beyond that. */
const allowedMm = ({ rules }: Context): number =>
  Math.max(QUALIFIED_UNBALANCE_MM, rules.place.qualifiedUnbalanceMm ?? 0);

/** Elevation at the POD, and what it and the curvature say of the speed. */
export function curvingFindings(context: Context): readonly Finding[] {
  const at = curveAtPod(context);
  const elevationRemarks = stationColumn(context, 'crosslevel').remarks;
  const elevationHeading: Heading = {
    part: 'track',
    method: segmentAverageMethod,
    what: 'elevationAtPod',
    title: 'Elevation at the POD, 155-ft average',
    subject: null,
    remarks: elevationRemarks,
  };
  const elevation =
    at.elevation === null
      ? notMeasured(elevationHeading, [NEEDED.elevation])
      : measured(elevationHeading, 'crossLength', at.elevation);
  if (context.alignment === 'tangent') return [elevation];
  const make = maker(context, at);
  return [
    elevation,
    make('balanceSpeed', 'Balance speed at the POD', 'speed', ['curvature', 'elevation'], (k, e) =>
      balanceSpeedMs(k, e),
    ),
    make(
      'maximumCurvingSpeed',
      `Maximum curving speed for ${Number(fromCanonical(allowedMm(context), 'in', 'crossLength').toFixed(2))} in of unbalance`,
      'speed',
      ['curvature', 'elevation'],
      (k, e) => maximumCurvingSpeedMs(k, e, allowedMm(context)),
    ),
    make(
      'balanceElevation',
      'Elevation that would balance the speed',
      'crossLength',
      ['curvature', 'speed'],
      (k, v) => balanceElevationMm(k, v),
    ),
    make(
      'unbalance',
      'Unbalance at the speed, outward positive',
      'crossLength',
      ['curvature', 'speed', 'elevation'],
      (k, v, e) => unbalanceMm(k, v, e),
      unbalanceLimit,
    ),
  ];
}

const unbalanceLimit = (context: Context, taken: Taken): readonly LimitCheck[] => {
  const rule = context.rules.track?.curvingSpeed;
  return rule === undefined
    ? []
    : [
        limitCheck({
          name:
            allowedMm(context) > QUALIFIED_UNBALANCE_MM
              ? 'Unbalance the equipment is qualified for'
              : 'Unbalance for which every vehicle is qualified',
          citation: rule.citation,
          sense: 'max',
          limit: allowedMm(context),
          source: rule.source,
          value: taken.value,
          u: taken.u,
        }),
      ];
};

const noSuchSpeed = (share: number): string =>
  `Within the uncertainty of the readings there may be no such speed (${percent(share)} of the draws have none): the outer rail is level with the inner one or lower, or the track is straight.`;

function maker(context: Context, at: CurveAtPod) {
  return (
    what: string,
    title: string,
    dimension: Dimension,
    needs: readonly [keyof CurveAtPod, ...(keyof CurveAtPod)[]],
    formula: (first: number, second: number, third: number) => number,
    limits: (context: Context, taken: Taken) => readonly LimitCheck[] = () => [],
  ): Finding => {
    const heading: Heading = { part: 'track', method: curvingSpeedMethod, what, title, subject: null };
    const missing = needs.filter((need) => at[need] === null).map((need) => NEEDED[need]);
    const [first, ...others] = needs.flatMap((need) => at[need] ?? []);
    if (missing.length > 0 || first === undefined) return notMeasured(heading, missing);
    const { taken, outOfRange: share } = draw(
      (v) => formula(v[0] ?? NaN, v[1] ?? NaN, v[2] ?? NaN),
      [first, ...others],
      context.seed,
    );
    if (!Number.isFinite(taken.value) || share > 0) return outOfRange(heading, taken, noSuchSpeed(share));
    return measured(heading, dimension, taken, limits(context, taken));
  };
}
