import { toCanonical } from '../../readings/convert';
import { gaugeChangeMethod, gaugeRate } from '../../track/gauge-change';
import { upTo } from '../../track/warp';
import { derive, measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';
import { stationColumn } from '../station-column';
import { across, along } from '../words';
import { worstWarpAmong } from './warp';

const WITHIN_M = toCanonical(31, 'ft', 'alongTrack');

const HEADING = { part: 'track', method: gaugeChangeMethod, subject: null } as const;
const MISSING = 'gauge at two undisturbed stations within 31 ft';
const NO_LIMIT = 'No rule set here limits the change of gauge.';

/** How fast gauge changes along the track: within 31 ft, and from one station to the next. */
export function gaugeChangeFindings(context: Context): readonly Finding[] {
  const column = stationColumn(context, 'gauge');
  const change: Heading = {
    ...HEADING,
    what: 'gaugeChangeWorst',
    title: 'Greatest change of gauge within 31 ft',
  };
  const rate: Heading = {
    ...HEADING,
    what: 'gaugeRateWorst',
    title: 'Greatest rate of change of gauge between neighbouring stations',
  };
  const widest = worstWarpAmong(context, column.at, upTo(WITHIN_M));
  if (widest === null) return [notMeasured(change, [MISSING]), notMeasured(rate, [MISSING])];
  const name = (index: number): string => context.stations[index]?.name ?? '?';
  const { pair } = widest;
  return [
    measured(
      {
        ...change,
        remarks: [
          `From station ${name(pair.from)} to station ${name(pair.to)}, ${along(pair.distanceM)}.`,
          NO_LIMIT,
          ...column.remarks,
        ],
      },
      'crossLength',
      widest.taken,
    ),
    rateFinding(context, rate),
  ];
}

function rateFinding(context: Context, heading: Heading): Finding {
  const column = stationColumn(context, 'gauge');
  let previous = -1;
  let worst: { from: number; to: number; distanceM: number; size: number } | null = null;
  context.stations.forEach(({ positionM }, index) => {
    const here = column.at[index];
    if (!here) return;
    const before = column.at[previous];
    const distanceM = positionM - (context.stations[previous]?.positionM ?? NaN);
    if (before && distanceM > TAPED_M && distanceM <= WITHIN_M + TAPED_M) {
      const size = Math.abs(gaugeRate(before.value, here.value, distanceM));
      if (worst === null || size > worst.size) worst = { from: previous, to: index, distanceM, size };
    }
    previous = index;
  });
  const found = worst as { from: number; to: number; distanceM: number } | null;
  const from = found && column.at[found.from];
  const to = found && column.at[found.to];
  if (!found || !from || !to) return notMeasured(heading, [MISSING]);
  const taken = derive((a, b) => gaugeRate(a, b, found.distanceM), [from, to]);
  return measured(
    {
      ...heading,
      remarks: [
        `${across(to.value - from.value)} from station ${context.stations[found.from]?.name ?? '?'} to station ${context.stations[found.to]?.name ?? '?'}, ${along(found.distanceM)}.`,
        NO_LIMIT,
        ...column.remarks,
      ],
    },
    'ratio',
    taken,
  );
}

/** Positions a millimetre apart are the same position. */
const TAPED_M = 0.001;
