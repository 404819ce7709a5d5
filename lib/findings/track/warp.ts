import { WARP_BASE_M, warpMethod, warpPairs, warpPairsAtBase, type WarpPair } from '../../track/warp';
import { crosslevelUnderLoadMm, underLoadMethod } from '../../track/under-load';
import { derive, distinct, measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding, Method } from '../finding';
import type { Taken } from '../reading-index';
import { checkAll, conditionRemarks } from '../rules-in-force';
import { stationColumn } from '../station-column';
import { across, along } from '../words';
import type { RuleQuantityId } from '../../rules/rule-quantity';
import { toCanonical } from '../../readings/convert';

export type Warp = {
  readonly pair: WarpPair;
  readonly taken: Taken;
};

const MISSING = 'crosslevel at two undisturbed stations less than 62 ft apart';

/** Elevation from which the footnote of the rule holds. */
const HIGH_ELEVATION_MM = toCanonical(6, 'in', 'crossLength');

/** Crosslevel standing, one entry per station of the context. */
export const standingCrosslevel = (context: Context): readonly (Taken | null)[] =>
  stationColumn(context, 'crosslevel').at;

/** The worst of some pairs; the first of equals. */
export function worstWarpOf(crosslevel: readonly (Taken | null)[], pairs: Iterable<WarpPair>): Warp | null {
  let worst: WarpPair | null = null;
  for (const pair of pairs) {
    if (worst === null || Math.abs(pair.changeMm) > Math.abs(worst.changeMm)) worst = pair;
  }
  return worst === null ? null : warpOf(crosslevel, worst);
}

export const warpStations = (context: Context, crosslevel: readonly (Taken | null)[]) =>
  context.stations.map(({ positionM }, index) => ({
    positionM,
    crosslevelMm: crosslevel[index]?.value ?? NaN,
  }));

function warpOf(crosslevel: readonly (Taken | null)[], pair: WarpPair): Warp | null {
  const from = crosslevel[pair.from];
  const to = crosslevel[pair.to];
  return from && to ? { pair, taken: derive((a, b) => b - a, [from, to]) } : null;
}

/** Change of crosslevel over every pair of stations less than 62 ft apart: per station, worst, and at the POD. */
export function warpFindings(context: Context): readonly Finding[] {
  const column = stationColumn(context, 'crosslevel');
  const crosslevel = column.at;
  const stations = warpStations(context, crosslevel);
  const perStation: (WarpPair | undefined)[] = [];
  let worst: WarpPair | null = null;
  let worstNearPod: WarpPair | null = null;
  for (const pair of warpPairs(stations)) {
    const size = Math.abs(pair.changeMm);
    if (worst === null || size > Math.abs(worst.changeMm)) worst = pair;
    if (nearPod(context, pair) && (worstNearPod === null || size > Math.abs(worstNearPod.changeMm))) {
      worstNearPod = pair;
    }
    const own = perStation[pair.to];
    if (own === undefined || size > Math.abs(own.changeMm)) perStation[pair.to] = pair;
  }
  const summary = (what: string, title: string, pair: WarpPair | null, remarks: readonly string[]): Finding =>
    warpFinding(
      context,
      {
        part: 'track',
        method: warpMethod,
        what,
        title,
        subject: null,
        remarks: [...remarks, ...column.remarks],
      },
      pair === null ? null : warpOf(crosslevel, pair),
      'crosslevelDifference62',
    );
  const atBase = worstWarpOf(crosslevel, warpPairsAtBase(stations));
  return [
    summary('warpWorst', 'Greatest warp in less than 62 ft', worst, atBaseRemarks(context, atBase)),
    summary('warpAtPod', 'Greatest warp within the 62 ft before the POD', worstNearPod, []),
    ...highElevation(context, crosslevel, stations),
    ...underLoad(context, crosslevel),
    ...perStation.flatMap((pair): readonly Finding[] => {
      const warp = pair === undefined ? null : warpOf(crosslevel, pair);
      const station = pair === undefined ? undefined : context.stations[pair.to];
      if (warp === null || station === undefined) return [];
      const limits = context.rules.trackLimits('crosslevelDifference62');
      return [
        measured(
          {
            part: 'track',
            method: warpMethod,
            what: 'warp',
            title: `Greatest warp up to station ${station.name}`,
            subject: { kind: 'station', id: station.id },
            remarks: [`Against station ${nameAt(context, warp.pair.from)}.`],
          },
          'crossLength',
          warp.taken,
          checkAll(limits, warp.taken.value, warp.taken.u),
        ),
      ];
    }),
  ];
}

/** Both stations within 62 ft before the POD, the POD itself included. */
export function nearPod(context: Context, pair: WarpPair): boolean {
  const from = context.stations[pair.from]?.positionM ?? -Infinity;
  const to = context.stations[pair.to]?.positionM ?? Infinity;
  return from >= -WARP_BASE_M - TAPED_M && to <= TAPED_M;
}

/** Positions a millimetre apart are the same position. */
const TAPED_M = 0.001;

/** At 15 ft 6 in every fourth station is exactly 62 ft off: outside the rule, but a car is twisted all the same. */
const atBaseRemarks = (context: Context, atBase: Warp | null): readonly string[] =>
  atBase === null
    ? []
    : [
        `Outside the rule, over exactly 62 ft: ${across(atBase.taken.value)} at most, from station ${nameAt(context, atBase.pair.from)} to station ${nameAt(context, atBase.pair.to)}.`,
      ];

/** Which way the track twists; crosslevel counts the outer rail of a curve and the left rail of tangent. */
const signRemark = (context: Context, value: number): string => {
  if (value === 0 || context.alignment === null) return '';
  const rail = context.alignment === 'tangent' ? 'left' : 'outer';
  return `The ${rail} rail ${value < 0 ? 'falls' : 'rises'} against the other in the direction of travel.`;
};

const nameAt = (context: Context, index: number): string => context.stations[index]?.name ?? '?';

function warpFinding(
  context: Context,
  heading: Heading,
  warp: Warp | null,
  quantity: RuleQuantityId,
): Finding {
  const limits = context.rules.trackLimits(quantity);
  const remarks = distinct([
    ...(heading.remarks ?? []),
    ...context.rules.remarks,
    ...conditionRemarks(limits),
  ]);
  if (warp === null) return notMeasured({ ...heading, remarks }, [MISSING]);
  const between = `From station ${nameAt(context, warp.pair.from)} to station ${nameAt(context, warp.pair.to)}, ${along(warp.pair.distanceM)}.`;
  return measured(
    { ...heading, remarks: distinct([between, signRemark(context, warp.taken.value), ...remarks]) },
    'crossLength',
    warp.taken,
    checkAll(limits, warp.taken.value, warp.taken.u),
  );
}

/** The tighter limit beside a point of 6 in elevation or more, pairs exactly 62 ft apart included. */
function highElevation(
  context: Context,
  crosslevel: readonly (Taken | null)[],
  stations: ReturnType<typeof warpStations>,
): readonly Finding[] {
  if (context.rules.trackLimits('crosslevelDifferenceHigh62').length === 0) return [];
  const high = (pair: WarpPair): boolean =>
    Math.min(crosslevel[pair.from]?.value ?? 0, crosslevel[pair.to]?.value ?? 0) >= HIGH_ELEVATION_MM;
  const pairs = [...warpPairs(stations), ...warpPairsAtBase(stations)].filter(high);
  const worst = worstWarpOf(crosslevel, pairs);
  if (worst === null) return [];
  return [
    warpFinding(
      context,
      {
        part: 'track',
        method: warpMethod,
        what: 'warpAtHighElevation',
        title: 'Greatest warp beside a point of 6 in elevation or more',
        subject: null,
        remarks: ['Pairs exactly 62 ft apart are compared here: the footnote says “within 62 feet”.'],
      },
      worst,
      'crosslevelDifferenceHigh62',
    ),
  ];
}

export const warpUnderLoadMethod: Method = {
  ...underLoadMethod,
  id: 'warp-under-load',
  name: 'Warp with movement under load',
  formula: `${underLoadMethod.formula} ${warpMethod.formula}`,
  validRange: `${underLoadMethod.validRange} ${warpMethod.validRange}`,
  sources: [...underLoadMethod.sources, ...warpMethod.sources],
};

/** Only stations where downward movement was read on both rails: not read is not zero. */
function underLoad(context: Context, crosslevel: readonly (Taken | null)[]): readonly Finding[] {
  const high = context.sides.outer ?? 'left';
  const highDown = stationColumn(context, 'verticalMovement', high);
  const lowDown = stationColumn(context, 'verticalMovement', high === 'left' ? 'right' : 'left');
  const loaded = crosslevel.map((standing, index) => {
    const down = highDown.at[index];
    const other = lowDown.at[index];
    return standing && down && other ? derive(crosslevelUnderLoadMm, [standing, down, other]) : null;
  });
  const count = loaded.filter((taken) => taken !== null).length;
  const worst = worstWarpOf(loaded, warpPairs(warpStations(context, loaded)));
  const heading: Heading = {
    part: 'track',
    method: warpUnderLoadMethod,
    what: 'warpUnderLoad',
    title: 'Greatest warp under load in less than 62 ft',
    subject: null,
    remarks: [
      ...(count > 0 ? [`From the ${count} stations where downward movement was read on both rails.`] : []),
      ...highDown.remarks,
      ...lowDown.remarks,
    ],
  };
  return worst === null
    ? [
        notMeasured(heading, [
          'downward movement of both rails at two undisturbed stations less than 62 ft apart',
        ]),
      ]
    : [warpFinding(context, heading, worst, 'crosslevelDifference62')];
}
