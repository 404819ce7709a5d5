import { deviationFromUniformMethod } from '../../track/deviation';
import { asReadMethod } from '../as-read';
import type { Context } from '../context';
import type { Finding, LimitCheck } from '../finding';
import type { Taken } from '../reading-index';
import { checkAll } from '../rules-in-force';
import { stationColumn } from '../station-column';
import { atStations, readAtStations, type AtStations } from './at-station';
import { QUARTER_62_M } from './chord-deviation';
import { columnDeviations, greatestDeviation, spacingRemarks } from './uniform';
import { largestOf, worstFinding } from './worst';

const READ = { part: 'track', method: asReadMethod } as const;
const UNIFORM = { part: 'track', method: deviationFromUniformMethod } as const;
const STANDING: AtStations = {
  ...READ,
  what: 'crosslevel',
  title: 'Crosslevel, station ',
  dimension: 'crossLength',
};
const FROM_UNIFORM: AtStations = {
  ...UNIFORM,
  what: 'crosslevelFromUniform',
  title: 'Crosslevel from uniform, station ',
  dimension: 'crossLength',
};
const MISSING = 'crosslevel at an undisturbed station';

/** Limits on reverse elevation speak of the outer rail low; crosslevel here is positive with it high. */
const reversed = (check: LimitCheck): LimitCheck => ({ ...check, sense: 'min', limit: -check.limit });

/** How a level is held against its limits; a long sheet says the same of most of its stations. */
function checksOf({ alignment, rules }: Context): (taken: Taken) => readonly LimitCheck[] {
  if (alignment === 'tangent') {
    const limits = rules.trackLimits('crosslevelTangent');
    return ({ value, u }) => checkAll(limits, value, u);
  }
  if (alignment === null) return () => [];
  const onReverse = rules.trackLimits('crosslevelReverseOnCurve');
  const onMost = rules.trackLimits('elevationMax');
  let last: { readonly reverse: readonly LimitCheck[]; readonly most: readonly LimitCheck[] } | null = null;
  let both: readonly LimitCheck[] = [];
  return ({ value, u }) => {
    const reverse = checkAll(onReverse, -value, u);
    const most = checkAll(onMost, value, u);
    if (last?.reverse !== reverse || last.most !== most) {
      last = { reverse, most };
      both = [...reverse.map(reversed), ...most];
    }
    return both;
  };
}

/** Crosslevel at each station, the extremes, and how far each departs from its neighbours. */
export function crosslevelFindings(context: Context): readonly Finding[] {
  const column = stationColumn(context, 'crosslevel');
  const onCurve = context.alignment === 'curve';
  const checks = checksOf(context);
  const perStation = readAtStations(STANDING, context, column, 'crosslevel', checks);
  const extreme = (what: string, title: string, rank: (value: number) => number): Finding => {
    const heading = {
      ...READ,
      what,
      title,
      subject: null,
      remarks: [...column.remarks, ...context.rules.remarks],
    };
    const worst = largestOf(column.at, rank);
    const finding = worstFinding(context, heading, worst, { missing: MISSING });
    return finding.kind === 'measured' && worst !== null
      ? { ...finding, limits: checks(worst.taken) }
      : finding;
  };
  const extremes = onCurve
    ? [
        extreme('crosslevelLeast', 'Least elevation of the outer rail', (value) => -value),
        extreme('crosslevelGreatest', 'Greatest elevation of the outer rail', (value) => value),
      ]
    : [extreme('crosslevelGreatest', 'Greatest crosslevel, either way', Math.abs)];
  return [...extremes, ...perStation, ...fromUniform(context)];
}

function fromUniform(context: Context): readonly Finding[] {
  const column = stationColumn(context, 'crosslevel');
  const deviations = columnDeviations(context, column, QUARTER_62_M);
  const remark =
    'The deviation from the nine-station average is an adopted method: the rules for classes 1 to 5 have no limit on it.';
  const worst = worstFinding(
    context,
    {
      ...UNIFORM,
      what: 'crosslevelFromUniformWorst',
      title: 'Greatest departure of crosslevel from uniform',
      subject: null,
      remarks: [remark, ...column.remarks, ...spacingRemarks(deviations)],
    },
    greatestDeviation(deviations),
    { missing: 'crosslevel at three or more undisturbed stations in a row' },
  );
  return [worst, ...atStations(FROM_UNIFORM, context, deviations.taken)];
}
