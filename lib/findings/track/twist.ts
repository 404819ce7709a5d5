import { notMeasured, measured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding, Method } from '../finding';
import { checkAll } from '../rules-in-force';
import { stationColumn } from '../station-column';
import { apart } from '../../track/warp';
import { worstWarpAmong } from './warp';

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
  const worst = worstWarpAmong(context, column.at, apart(BASE_M, TOLERANCE_M));
  if (worst === null) return [notMeasured(heading, ['crosslevel at undisturbed stations 3 m apart'])];
  const { taken, pair } = worst;
  const between = `From station ${context.stations[pair.from]?.name} to station ${context.stations[pair.to]?.name}.`;
  return [
    measured(
      { ...heading, remarks: [between, ...(heading.remarks ?? [])] },
      'crossLength',
      taken,
      checkAll(limits, taken.value, taken.u),
    ),
  ];
}
