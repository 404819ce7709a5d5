import { gaugeUnderLoadMm, underLoadMethod } from '../../track/under-load';
import { derive, distinct, remarked } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';
import type { Taken } from '../reading-index';
import { checkAll } from '../rules-in-force';
import { stationColumn } from '../station-column';
import { atStations, type AtStations } from './at-station';
import { largestOf, worstFinding } from './worst';

const HEADING = { part: 'track', method: underLoadMethod } as const;

const UNDER_LOAD: AtStations = {
  ...HEADING,
  what: 'gaugeUnderLoad',
  title: 'Gauge under load, station ',
  dimension: 'crossLength',
};

/** Gauge with the sideways movement of both rails added, at each station where movement was looked for. */
export function gaugeUnderLoadFindings(context: Context): readonly Finding[] {
  const gauge = stationColumn(context, 'gauge');
  const left = stationColumn(context, 'lateralMovement', 'left');
  const right = stationColumn(context, 'lateralMovement', 'right');
  const limits = context.rules.trackLimits('gaugeUnderLoad');
  const loaded = gauge.at.map(
    (standing, index) => standing && withMovement(standing, left.at[index], right.at[index]),
  );
  const perStation = atStations(
    UNDER_LOAD,
    context,
    (index) => loaded[index],
    ({ value, u }) => checkAll(limits, value, u),
  );
  const gaugeOnly = gauge.count - perStation.length;
  const widest = worstFinding(
    context,
    {
      ...HEADING,
      what: 'gaugeUnderLoadWidest',
      title: 'Widest gauge under load',
      subject: null,
      remarks: distinct([
        ...gauge.remarks,
        ...left.remarks,
        ...right.remarks,
        ...(gaugeOnly > 0 && perStation.length > 0
          ? [`At ${gaugeOnly} of ${gauge.count} stations with gauge no movement was recorded.`]
          : []),
      ]),
    },
    largestOf(loaded, (value) => value),
    {
      limits: 'gaugeUnderLoad',
      missing: 'sideways movement under load with gauge at an undisturbed station',
    },
  );
  return [widest, ...perStation];
}

/** Null when movement was read on neither rail; with one rail alone it is a least value and says so. */
export function withMovement(
  gauge: Taken,
  left: Taken | null | undefined,
  right: Taken | null | undefined,
): Taken | null {
  if (left && right) return derive(gaugeUnderLoadMm, [gauge, left, right]);
  const one = left ?? right;
  if (!one) return null;
  return remarked(
    derive((standing, moved) => gaugeUnderLoadMm(standing, moved, 0), [gauge, one]),
    `Movement of the ${left ? 'right' : 'left'} rail not recorded: the gauge under load was at least this.`,
  );
}
