import { quantityOf } from '../../readings/quantities';
import { limitsFor, type ClassLimit } from '../../rules/apply';
import { degreesOfCurve } from '../../track/curvature';
import { asReadMethod } from '../as-read';
import type { Context } from '../context';
import type { Finding, LimitCheck } from '../finding';
import type { Taken } from '../reading-index';
import { checkAll } from '../rules-in-force';
import { stationColumn } from '../station-column';
import { atStations, type AtStations } from './at-station';
import { podAverage } from './curvature';
import { stationCurvatures } from './station-curvatures';
import { largestOf, worstFinding } from './worst';

type Count = {
  readonly quantity: string;
  readonly slot: string;
  readonly what: string;
  readonly title: string;
  readonly remark: string;
  /** The fewest are worst, and held against the limits on ties. */
  readonly fewest?: boolean;
};

const COUNTS: readonly Count[] = [
  {
    quantity: 'defectiveTies',
    slot: '',
    what: 'defectiveTies',
    title: 'Defective ties in 39 ft',
    remark:
      '49 CFR 213.109 counts the sound ties in 39 ft, which the number of defective ones alone does not give: not compared with it.',
  },
  {
    quantity: 'soundTies',
    slot: '',
    what: 'soundTies',
    title: 'Sound ties in 39 ft',
    remark:
      'Compared with 49 CFR 213.109(b)(4) by number alone: the rule also wants them effectively distributed and near the joints.',
    fewest: true,
  },
  ...(['left', 'right'] as const).map((side) => ({
    quantity: 'fasteningsLoose',
    slot: side,
    what: `fasteningsLoose${side === 'left' ? 'Left' : 'Right'}`,
    title: `Fastenings loose, drawn or missing in 39 ft, ${side} rail`,
    remark: '',
  })),
];

/**
 * Limits on sound ties at a station: they differ with the sharpness of the curve there, taken from
 * the station's own mid-ordinate, else from the average at the POD.
 */
function tieLimits(context: Context, index: number): readonly ClassLimit[] {
  const { track, trackClass } = context.rules;
  if (track === undefined || trackClass === undefined || context.alignment === null) return [];
  const curvatures = stationCurvatures(context);
  const curvature = curvatures[index] ?? podAverage(context, curvatures)?.taken;
  return limitsFor(track, trackClass.id, 'tiesPer39ft', {
    onCurve: context.alignment === 'curve',
    ...(curvature ? { curveDegrees: Math.abs(degreesOfCurve(curvature.value)) } : {}),
  });
}

/** Fewest sound ties the class in force allows at each station of the context; NaN where it has no limit. */
export const leastTies = (context: Context): readonly number[] =>
  context.stations.map((_, index) =>
    tieLimits(context, index).reduce((most, { value }) => (value < most ? most : value), NaN),
  );

/** Counts of what held the rail: per station, and the most (of sound ties, the fewest). */
export const tieFindings = (context: Context): readonly Finding[] =>
  COUNTS.flatMap(({ quantity, slot, what, title, remark, fewest = false }) => {
    const column = stationColumn(context, quantity, slot);
    const of: AtStations = { what, title: `${title}, station `, method: asReadMethod, dimension: 'count' };
    const checks = ({ value, u }: Taken, index: number): readonly LimitCheck[] =>
      fewest ? checkAll(tieLimits(context, index), value, u) : [];
    const worst = largestOf(column.at, (value) => (fewest ? -value : value));
    const extreme = worstFinding(
      context,
      {
        part: 'track',
        method: asReadMethod,
        what: fewest ? `${what}Fewest` : `${what}Most`,
        title: `${title}, ${fewest ? 'fewest' : 'most'} at one station`,
        subject: null,
        remarks: [remark, ...column.remarks],
      },
      worst,
      { missing: `${quantityOf(quantity).name.toLowerCase()} at an undisturbed station`, dimension: 'count' },
    );
    return [
      extreme.kind === 'measured' && worst !== null
        ? { ...extreme, limits: checks(worst.taken, worst.index) }
        : extreme,
      ...atStations(of, context, (index) => column.at[index], checks),
    ];
  });
