import { asReadMethod } from '../as-read';
import type { Context } from '../context';
import type { Finding } from '../finding';
import { checkAll } from '../rules-in-force';
import { stationColumn } from '../station-column';
import { readAtStations, type AtStations } from './at-station';
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
  const perStation = readAtStations(STANDING, context, column, 'gauge', ({ value, u }) =>
    checkAll(limits, value, u),
  );
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
