import { bisectLeft, bisectRight } from 'd3-array';
import {
  apart,
  levelsInOrder,
  LESS_THAN_62_FT,
  upTo,
  WARP_BASE_M,
  warpMethod,
  worstWarp,
  worstWarpUpToEach,
  type LevelsInOrder,
  type Reach,
  type WarpPair,
} from '../../track/warp';
import { crosslevelUnderLoadMm, underLoadMethod } from '../../track/under-load';
import { derive, difference, distinct, measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding, Method } from '../finding';
import { oncePerContext } from '../once-per-context';
import type { Taken } from '../reading-index';
import { checkAll, conditionRemarks } from '../rules-in-force';
import { stationColumn } from '../station-column';
import { across, along } from '../words';
import { placesOf } from './uniform';
import { atStation, type AtStations } from './at-station';
import type { RuleQuantityId } from '../../rules/rule-quantity';
import { toCanonical } from '../../readings/convert';

export type Warp = {
  readonly pair: WarpPair;
  readonly taken: Taken;
};

const MISSING = 'crosslevel at two undisturbed stations less than 62 ft apart';

/** 31 ft: near the truck centres of a short car. */
const SHORT_BASE_M = toCanonical(31, 'ft', 'alongTrack');

/** Elevation from which the footnote of the rule holds. */
const HIGH_ELEVATION_MM = toCanonical(6, 'in', 'crossLength');

/** Crosslevel standing, one entry per station of the context. */
export const standingCrosslevel = (context: Context): readonly (Taken | null)[] =>
  stationColumn(context, 'crosslevel').at;

/** The worst pair within reach of those that `which` lets through, with its uncertainty. */
export function worstWarpAmong(
  context: Context,
  crosslevel: readonly (Taken | null)[],
  reach: Reach,
  which?: (from: number, to: number) => boolean,
): Warp | null {
  const pair = worstWarp(levelsOf(context, crosslevel), reach, which);
  return pair === null ? null : warpOf(crosslevel, pair);
}

const knownLevels = oncePerContext(() => new WeakMap<readonly (Taken | null)[], LevelsInOrder>());

function levelsOf(context: Context, crosslevel: readonly (Taken | null)[]): LevelsInOrder {
  const known = knownLevels(context);
  const levels =
    known.get(crosslevel) ??
    levelsInOrder(
      placesOf(context).positionsM,
      crosslevel.map((taken) => taken?.value ?? NaN),
    );
  known.set(crosslevel, levels);
  return levels;
}

function warpOf(crosslevel: readonly (Taken | null)[], pair: WarpPair): Warp | null {
  const from = crosslevel[pair.from];
  const to = crosslevel[pair.to];
  return from && to ? { pair, taken: difference(from, to) } : null;
}

/** Change of crosslevel over every pair of stations less than 62 ft apart: per station, worst, and at the POD. */
export function warpFindings(context: Context): readonly Finding[] {
  const column = stationColumn(context, 'crosslevel');
  const crosslevel = column.at;
  const levels = levelsOf(context, crosslevel);
  const worst = worstWarp(levels);
  const worstNearPod = worstWarp(levels, LESS_THAN_62_FT, nearPod(context));
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
  const atBase = worstWarpAmong(context, crosslevel, apart(WARP_BASE_M));
  return [
    summary('warpWorst', 'Greatest warp in less than 62 ft', worst, atBaseRemarks(context, atBase)),
    summary('warpAtPod', 'Greatest warp within the 62 ft before the POD', worstNearPod, []),
    ...shortWarp(context, crosslevel, column.remarks),
    ...highElevation(context, crosslevel),
    ...underLoad(context, crosslevel),
    ...upToEach(context, crosslevel, levels),
  ];
}

function upToEach(
  context: Context,
  crosslevel: readonly (Taken | null)[],
  levels: LevelsInOrder,
): readonly Finding[] {
  const limits = context.rules.trackLimits('crosslevelDifference62');
  const finding = atStation(UP_TO, context);
  // A station stands against several that follow it.
  const against: (readonly string[] | undefined)[] = [];
  const found: Finding[] = [];
  for (const pair of worstWarpUpToEach(levels, LESS_THAN_62_FT)) {
    const taken = warpOf(crosslevel, pair)?.taken;
    if (taken === undefined) continue;
    const remarks = (against[pair.from] ??= [`Against station ${nameAt(context, pair.from)}.`]);
    found.push(finding(pair.to, taken, checkAll(limits, taken.value, taken.u), remarks));
  }
  return found;
}

const UP_TO: AtStations = {
  what: 'warp',
  title: 'Greatest warp up to station ',
  method: warpMethod,
  dimension: 'crossLength',
};

/** Both stations within 62 ft before the POD, the POD itself included. */
export function nearPod(context: Context): (from: number, to: number) => boolean {
  const { positionsM } = placesOf(context);
  const first = bisectLeft(positionsM, -WARP_BASE_M - TAPED_M);
  const last = bisectRight(positionsM, TAPED_M) - 1;
  return (from, to) => from >= first && to <= last;
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
  missing: string = MISSING,
): Finding {
  const limits = context.rules.trackLimits(quantity);
  const remarks = distinct([
    ...(heading.remarks ?? []),
    ...context.rules.remarks,
    ...conditionRemarks(limits),
  ]);
  if (warp === null) return notMeasured({ ...heading, remarks }, [missing]);
  const between = `From station ${nameAt(context, warp.pair.from)} to station ${nameAt(context, warp.pair.to)}, ${along(warp.pair.distanceM)}.`;
  return measured(
    { ...heading, remarks: distinct([between, signRemark(context, warp.taken.value), ...remarks]) },
    'crossLength',
    warp.taken,
    checkAll(limits, warp.taken.value, warp.taken.u),
  );
}

/**
 * Over 31 ft and less, where a car's trucks stand on different twists; part 213 limits it only on
 * spirals that were fixed for want of room.
 */
function shortWarp(
  context: Context,
  crosslevel: readonly (Taken | null)[],
  columnRemarks: readonly string[],
): readonly Finding[] {
  return [
    warpFinding(
      context,
      {
        part: 'track',
        method: shortWarpMethod,
        what: 'warpShortWorst',
        title: 'Greatest short warp, within 31 ft',
        subject: null,
        remarks: ['Pairs exactly 31 ft apart are compared here.', ...columnRemarks],
      },
      worstWarpAmong(context, crosslevel, upTo(SHORT_BASE_M)),
      'spiralVariation31',
      'crosslevel at two undisturbed stations within 31 ft',
    ),
  ];
}

/** The tighter limit beside a point of 6 in elevation or more, pairs exactly 62 ft apart included. */
function highElevation(context: Context, crosslevel: readonly (Taken | null)[]): readonly Finding[] {
  const isHigh = (index: number): boolean => (crosslevel[index]?.value ?? 0) >= HIGH_ELEVATION_MM;
  if (context.rules.trackLimits('crosslevelDifferenceHigh62').length === 0) return [];
  if (!crosslevel.some((_, index) => isHigh(index))) return [];
  const high = (from: number, to: number): boolean => isHigh(from) && isHigh(to);
  const worst = worstWarpAmong(context, crosslevel, upTo(WARP_BASE_M), high);
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

export const shortWarpMethod: Method = {
  ...warpMethod,
  id: 'warp-short',
  name: 'Short warp: change of crosslevel between any two points within 31 ft',
  formula:
    'warp = XL(b) − XL(a) for every pair of stations a, b with 0 < b − a ≤ 31 ft; the greatest |warp| is reported. XL: crosslevel.',
  validRange:
    'Any spacing of stations up to 31 ft. Stations without crosslevel are passed over; nothing is interpolated, so a peak between stations is not seen.',
  sources: [
    { text: '49 CFR 213.63(a), footnote *: the same difference on certain spirals', status: 'published' },
    { text: 'Reported on all track: engineering judgement', status: 'engineering judgement' },
  ],
};

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
  const loaded =
    highDown.count === 0 || lowDown.count === 0
      ? []
      : crosslevel.map((standing, index) => {
          const down = highDown.at[index];
          const other = lowDown.at[index];
          return standing && down && other ? derive(crosslevelUnderLoadMm, [standing, down, other]) : null;
        });
  const count = loaded.filter((taken) => taken !== null).length;
  const worst = worstWarpAmong(context, loaded, LESS_THAN_62_FT);
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
