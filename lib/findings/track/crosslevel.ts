import { deviationFromUniformMethod } from '../../track/deviation';
import { asReadMethod } from '../as-read';
import { measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding, LimitCheck } from '../finding';
import { LEFT_OUT_WORDS } from '../reading-state';
import { checkAll } from '../rules-in-force';
import { stationColumn } from '../station-column';
import { QUARTER_62_M } from './chord-deviation';
import { deviationAt, spacingRemarks } from './uniform';
import { largest, worstFinding, type At } from './worst';

const READ = { part: 'track', method: asReadMethod } as const;
const UNIFORM = { part: 'track', method: deviationFromUniformMethod } as const;
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

/** Crosslevel at each station, the extremes, and how far each departs from its neighbours. */
export function crosslevelFindings(context: Context): readonly Finding[] {
  const column = stationColumn(context, 'crosslevel');
  const onCurve = context.alignment === 'curve';
  const perStation = context.stations.flatMap((station, index): readonly Finding[] => {
    const heading: Heading = {
      ...READ,
      what: 'crosslevel',
      title: `Crosslevel, station ${station.name}`,
      subject: { kind: 'station', id: station.id },
    };
    const taken = column.at[index];
    const why = column.leftOut[index];
    if (taken) return [measured(heading, 'crossLength', taken, checks(context, taken.value, taken.u))];
    return why
      ? [notMeasured(heading, [`crosslevel undisturbed; read only where ${LEFT_OUT_WORDS[why]}`])]
      : [];
  });
  const all: readonly At[] = column.at.flatMap((taken, index) => (taken === null ? [] : [{ index, taken }]));
  const extreme = (what: string, title: string, rank: (value: number) => number): Finding => {
    const heading = {
      ...READ,
      what,
      title,
      subject: null,
      remarks: [...column.remarks, ...context.rules.remarks],
    };
    const worst = largest(all, rank);
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
  const deviations = deviationAt(context, column, QUARTER_62_M);
  const remark =
    'The deviation from the nine-station average is an adopted method: the rules for classes 1 to 5 have no limit on it.';
  const all: At[] = [];
  const perStation: Finding[] = [];
  context.stations.forEach((station, index) => {
    const taken = deviations.at[index];
    if (!taken) return;
    all.push({ index, taken });
    perStation.push(
      measured(
        {
          ...UNIFORM,
          what: 'crosslevelFromUniform',
          title: `Crosslevel from uniform, station ${station.name}`,
          subject: { kind: 'station', id: station.id },
        },
        'crossLength',
        taken,
      ),
    );
  });
  const worst = worstFinding(
    context,
    {
      ...UNIFORM,
      what: 'crosslevelFromUniformWorst',
      title: 'Greatest departure of crosslevel from uniform',
      subject: null,
      remarks: [remark, ...column.remarks, ...(all.length > 0 ? spacingRemarks(deviations) : [])],
    },
    largest(all, Math.abs),
    { missing: 'crosslevel at three or more undisturbed stations in a row' },
  );
  return [worst, ...perStation];
}
