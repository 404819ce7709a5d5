import { deviationFromUniformMethod } from '../../track/deviation';
import { asReadMethod } from '../as-read';
import type { Context } from '../context';
import type { Finding, LimitCheck } from '../finding';
import type { Taken } from '../reading-index';
import { checkAll } from '../rules-in-force';
import { stationColumn } from '../station-column';
import { atStation, leftOutAt, type AtStations } from './at-station';
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

function checks(context: Context, value: number, u: number): readonly LimitCheck[] {
  const { trackLimits } = context.rules;
  if (context.alignment === 'tangent') return checkAll(trackLimits('crosslevelTangent'), value, u);
  if (context.alignment === 'curve') {
    return [
      ...checkAll(trackLimits('crosslevelReverseOnCurve'), -value, u).map(reversed),
      ...checkAll(trackLimits('elevationMax'), value, u),
    ];
  }
  return [];
}

/** A level is read to an eighth: a long sheet holds the same few values again and again. */
function rememberedChecks(context: Context): (taken: Taken) => readonly LimitCheck[] {
  const known = new Map<number, { readonly u: number; readonly checks: readonly LimitCheck[] }>();
  return ({ value, u }) => {
    const before = known.get(value);
    if (before?.u === u) return before.checks;
    const found = checks(context, value, u);
    known.set(value, { u, checks: found });
    return found;
  };
}

/** Crosslevel at each station, the extremes, and how far each departs from its neighbours. */
export function crosslevelFindings(context: Context): readonly Finding[] {
  const column = stationColumn(context, 'crosslevel');
  const onCurve = context.alignment === 'curve';
  const perStation: Finding[] = [];
  const checksOf = rememberedChecks(context);
  context.stations.forEach((_, index) => {
    const taken = column.at[index];
    const why = column.leftOut[index];
    if (taken) perStation.push(atStation(STANDING, context, index, taken, checksOf(taken)));
    else if (why) perStation.push(leftOutAt(STANDING, context, index, 'crosslevel', why));
  });
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
    return finding.kind === 'measured'
      ? { ...finding, limits: checks(context, finding.value, finding.u) }
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
  const perStation: Finding[] = [];
  context.stations.forEach((_, index) => {
    const taken = deviations.taken(index);
    if (!taken) return;
    perStation.push(atStation(FROM_UNIFORM, context, index, taken));
  });
  const worst = worstFinding(
    context,
    {
      ...UNIFORM,
      what: 'crosslevelFromUniformWorst',
      title: 'Greatest departure of crosslevel from uniform',
      subject: null,
      remarks: [remark, ...column.remarks, ...(perStation.length > 0 ? spacingRemarks(deviations) : [])],
    },
    greatestDeviation(deviations),
    { missing: 'crosslevel at three or more undisturbed stations in a row' },
  );
  return [worst, ...perStation];
}
