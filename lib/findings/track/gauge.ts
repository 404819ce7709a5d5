import { asReadMethod } from '../as-read';
import type { Context } from '../context';
import type { Finding } from '../finding';
import { checkAll } from '../rules-in-force';
import { stationColumn } from '../station-column';
import { atStation, leftOutAt, type AtStations } from './at-station';
import { largestOf, worstFinding } from './worst';

const HEADING = { part: 'track', method: asReadMethod } as const;
const STANDING: AtStations = {
  ...HEADING,
  what: 'gauge',
  title: 'Gauge, standing, station ',
  dimension: 'crossLength',
};
const MISSING = 'gauge at an undisturbed station';

/** Standing gauge at each station against the limits of its class, and the widest and narrowest. */
export function gaugeFindings(context: Context): readonly Finding[] {
  const column = stationColumn(context, 'gauge');
  const limits = context.rules.trackLimits('gauge');
  const perStation: Finding[] = [];
  context.stations.forEach((_, index) => {
    const taken = column.at[index];
    const why = column.leftOut[index];
    if (taken)
      perStation.push(atStation(STANDING, context, index, taken, checkAll(limits, taken.value, taken.u)));
    else if (why) perStation.push(leftOutAt(STANDING, context, index, 'gauge', why));
  });
  const worst = (what: string, title: string, rank: (value: number) => number): Finding =>
    worstFinding(
      context,
      { ...HEADING, what, title, subject: null, remarks: column.remarks },
      largestOf(column.at, rank),
      { limits: 'gauge', missing: MISSING },
    );
  return [
    worst('gaugeWidest', 'Widest standing gauge', (value) => value),
    worst('gaugeNarrowest', 'Narrowest standing gauge', (value) => -value),
    ...perStation,
  ];
}
