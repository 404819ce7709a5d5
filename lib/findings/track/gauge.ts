import { asReadMethod } from '../as-read';
import { measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';
import { LEFT_OUT_WORDS } from '../reading-state';
import { checkAll } from '../rules-in-force';
import { stationColumn } from '../station-column';
import { largest, worstFinding, type At } from './worst';

const HEADING = { part: 'track', method: asReadMethod } as const;
const MISSING = 'gauge at an undisturbed station';

/** Standing gauge at each station against the limits of its class, and the widest and narrowest. */
export function gaugeFindings(context: Context): readonly Finding[] {
  const column = stationColumn(context, 'gauge');
  const limits = context.rules.trackLimits('gauge');
  const perStation = context.stations.flatMap((station, index): readonly Finding[] => {
    const heading: Heading = {
      ...HEADING,
      what: 'gauge',
      title: `Gauge, standing, station ${station.name}`,
      subject: { kind: 'station', id: station.id },
    };
    const taken = column.at[index];
    const why = column.leftOut[index];
    if (taken) return [measured(heading, 'crossLength', taken, checkAll(limits, taken.value, taken.u))];
    return why ? [notMeasured(heading, [`gauge undisturbed; read only where ${LEFT_OUT_WORDS[why]}`])] : [];
  });
  const all: readonly At[] = column.at.flatMap((taken, index) => (taken === null ? [] : [{ index, taken }]));
  const worst = (what: string, title: string, rank: (value: number) => number): Finding =>
    worstFinding(
      context,
      { ...HEADING, what, title, subject: null, remarks: column.remarks },
      largest(all, rank),
      { limits: 'gauge', missing: MISSING },
    );
  return [
    worst('gaugeWidest', 'Widest standing gauge', (value) => value),
    worst('gaugeNarrowest', 'Narrowest standing gauge', (value) => -value),
    ...perStation,
  ];
}
