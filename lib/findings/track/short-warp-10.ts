import { toCanonical } from '../../readings/convert';
import { lessThan, warpMethod } from '../../track/warp';
import { measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding, Method } from '../finding';
import { checkAll } from '../rules-in-force';
import { stationColumn } from '../station-column';
import { worstWarpAmong } from './warp';

const BASE_M = toCanonical(10, 'ft', 'alongTrack');

export const warpWithin10Method: Method = {
  ...warpMethod,
  id: 'warp-10',
  name: 'Short warp: change of crosslevel between any two points less than 10 ft apart',
  formula:
    'warp = XL(b) − XL(a) for every pair of stations a, b with 0 < b − a < 10 ft; the greatest |warp| is reported. XL: crosslevel.',
  validRange: 'Stations less than 10 ft apart; nothing is interpolated.',
  sources: [{ text: '49 CFR 213.63(b)', status: 'published' }],
};

/** Short warp where the rules in force limit it: at a qualified cant deficiency of more than 5 in. */
export function shortWarp10Findings(context: Context): readonly Finding[] {
  const limits = context.rules.trackLimits('crosslevelDifference10');
  if (limits.length === 0) return [];
  const column = stationColumn(context, 'crosslevel');
  const heading: Heading = {
    part: 'track',
    method: warpWithin10Method,
    what: 'warpWithin10',
    title: 'Greatest short warp, less than 10 ft',
    subject: null,
    remarks: [...column.remarks, ...context.rules.remarks],
  };
  const worst = worstWarpAmong(context, column.at, lessThan(BASE_M));
  if (worst === null)
    return [notMeasured(heading, ['crosslevel at two undisturbed stations less than 10 ft apart'])];
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
