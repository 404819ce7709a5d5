import { derive, notMeasured, measured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding, Method } from '../finding';
import type { Taken } from '../reading-index';
import { checkAll } from '../rules-in-force';
import { stationColumn } from '../station-column';
import { warpPairs } from '../../track/warp';
import { warpStations } from './warp';

const BASE_M = 3;
/** A tape along the rail is good to about half a foot. */
const TOLERANCE_M = 0.15;

export const twistMethod: Method = {
  id: 'twist-3m',
  name: 'Twist over a base of 3 m',
  formula: 'twist = XL(b) − XL(a) for stations a, b 3 m apart (within 0.15 m). XL: crosslevel.',
  validRange: 'Only stations that were taken 3 m apart: nothing is interpolated.',
  sources: [
    { text: 'EN 13848-1, definition of twist', status: 'from memory' },
    { text: 'Tolerance of 0.15 m on the base', status: 'engineering judgement' },
  ],
};

/** Twist, where the rules in force limit it; the worst pair of the sheet. */
export function twistFindings(context: Context): readonly Finding[] {
  const limits = context.rules.trackLimits('twist3m');
  if (limits.length === 0) return [];
  const column = stationColumn(context, 'crosslevel');
  const heading: Heading = {
    part: 'track',
    method: twistMethod,
    what: 'twist3m',
    title: 'Greatest twist over 3 m',
    subject: null,
    remarks: [...column.remarks, ...context.rules.remarks],
  };
  let worst: { readonly taken: Taken; readonly between: string } | null = null;
  for (const pair of warpPairs(warpStations(context, column.at), BASE_M + TOLERANCE_M)) {
    if (pair.distanceM < BASE_M - TOLERANCE_M) continue;
    const from = column.at[pair.from];
    const to = column.at[pair.to];
    if (!from || !to) continue;
    if (worst !== null && Math.abs(pair.changeMm) <= Math.abs(worst.taken.value)) continue;
    worst = {
      taken: derive((a, b) => b - a, [from, to]),
      between: `From station ${context.stations[pair.from]?.name} to station ${context.stations[pair.to]?.name}.`,
    };
  }
  if (worst === null) return [notMeasured(heading, ['crosslevel at undisturbed stations 3 m apart'])];
  const { taken, between } = worst;
  return [
    measured(
      { ...heading, remarks: [between, ...(heading.remarks ?? [])] },
      'crossLength',
      taken,
      checkAll(limits, taken.value, taken.u),
    ),
  ];
}
