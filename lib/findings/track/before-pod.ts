import { WARP_BASE_M } from '../../track/warp';
import { UNIFORM_STATIONS } from '../../track/deviation';
import { derive, distinct, measured, notMeasured, type Heading } from '../build';
import type { Context, Station } from '../context';
import type { Finding, Method } from '../finding';
import type { Taken } from '../reading-index';
import { checkAll } from '../rules-in-force';
import { stationColumn, type Column as StationColumn } from '../station-column';
import type { RuleQuantityId } from '../../rules/rule-quantity';
import { largestOf } from './worst';

export const deviationBeforePodMethod: Method = {
  id: 'deviation-before-pod',
  name: 'Deviation just before the POD from the track leading up to it',
  formula:
    'deviation(i) = m(i) − mean of the nine stations next before the last 62 ft; i: the stations within 62 ft before the POD. m: mid-chord offset.',
  validRange:
    'Steady curve or tangent: on a spiral the change of curvature is in it. Three or more undisturbed stations with a reading before the last 62 ft.',
  sources: [
    {
      text: 'The nine-station average of 49 CFR 213.327(a) is centred on the point, which disturbed track beyond the POD does not allow; the stations before stand in for it',
      status: 'engineering judgement',
    },
  ],
};

/** Positions a millimetre apart are the same position. */
const SAME_POSITION_M = 0.001;
const FEWEST = 3;

type Column = {
  readonly what: string;
  readonly name: string;
  readonly quantity: string;
  readonly slot: string;
  readonly limits: RuleQuantityId;
};

/**
 * Greatest deviation within the 62 ft before the POD from what the track was like before that. The
 * centred average cannot be had there: it reaches into disturbed track, and shrinks about the very
 * kink it is to show.
 */
export function beforePodFinding(context: Context, { what, name, quantity, slot, limits }: Column): Finding {
  const column = stationColumn(context, quantity, slot);
  const { near, back } = readBeforePod(context, column);
  const heading: Heading = {
    part: 'track',
    method: deviationBeforePodMethod,
    what: `${what}BeforePod`,
    title: `${name}, greatest deviation within 62 ft before the POD`,
    subject: null,
  };
  const uniform = back.map(({ taken }) => taken);
  const worst = largestOf(
    near.map(({ taken }) => against(taken, uniform)),
    Math.abs,
  );
  const [first] = back;
  const last = back.at(-1);
  if (worst === null || first === undefined || last === undefined || back.length < FEWEST) {
    return notMeasured(heading, [
      `${name.toLowerCase()}, at undisturbed stations within 62 ft before the POD and at three or more before them`,
    ]);
  }
  const { taken } = worst;
  return measured(
    {
      ...heading,
      remarks: distinct([
        `At station ${near[worst.index]?.station.name ?? '?'}.`,
        `From the mean of ${back.length} stations, ${first.station.name} to ${last.station.name}: an adopted method.`,
        ...context.rules.remarks,
      ]),
    },
    'crossLength',
    taken,
    checkAll(context.rules.trackLimits(limits), taken.value, taken.u),
  );
}

type Read = { readonly station: Station; readonly taken: Taken };

/** Stations read within 62 ft before the POD, and the last nine before those, in order of position. */
function readBeforePod({ stations }: Context, { at }: StationColumn): { near: Read[]; back: Read[] } {
  const [near, back]: [Read[], Read[]] = [[], []];
  for (let index = stations.length - 1; index >= 0 && back.length < UNIFORM_STATIONS; index -= 1) {
    const [station, taken] = [stations[index], at[index]];
    if (station === undefined || !taken || station.positionM > SAME_POSITION_M) continue;
    (station.positionM >= -WARP_BASE_M - SAME_POSITION_M ? near : back).unshift({ station, taken });
  }
  return { near, back };
}

const against = (taken: Taken, uniform: readonly Taken[]): Taken =>
  derive(
    (own, ...others) => own - others.reduce((sum, each) => sum + each, 0) / others.length,
    [taken, ...uniform],
  );
