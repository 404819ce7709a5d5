import { limitsFor, overBase, type ClassLimit } from '../../rules/apply';
import type { Place } from '../../rules/rule-set';
import { difference, measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding, Method } from '../finding';
import { oncePerContext } from '../once-per-context';
import type { Taken } from '../reading-index';
import { checkAll } from '../rules-in-force';
import { stationColumn } from '../station-column';
import { along } from '../words';
import { stationCurvatures } from './station-curvatures';

const BASE_M = 3;
/** A tape along the rail is good to about half a foot. */
const TOLERANCE_M = 0.15;
/** A base converted from feet is the same base to a millimetre. */
const EXACT_M = 0.001;

export const twistMethod: Method = {
  id: 'twist-3m',
  name: 'Twist over a base',
  formula:
    'twist = XL(b) − XL(a) for stations a, b a base l apart; at each station the pair that comes closest to, or furthest beyond, its limit for that base. XL: crosslevel. Where a limit hangs on cant and radius: cant (XL(a) + XL(b))/2, radius from the mid-ordinate read at b, else at a.',
  validRange:
    'Stations 3 m apart (within 0.15 m), or any base the limit is given over. Only stations that were taken: nothing is interpolated.',
  sources: [
    { text: 'EN 13848-1, definition of twist', status: 'from memory' },
    { text: 'Tolerance of 0.15 m on the base', status: 'engineering judgement' },
  ],
};

export type Twist = {
  /** Indices of the stations of the context. */
  readonly from: number;
  readonly to: number;
  readonly taken: Taken;
  /** Base where the limit depends on it, m; undefined where it holds over 3 m alone. */
  readonly baseM: number | undefined;
  /** Where both the cant and the radius there were read. */
  readonly bend: Place['bend'];
  readonly limits: readonly ClassLimit[];
  /** Share of its limit that the twist takes. */
  readonly share: number;
};

/** The limits that hold over a base; none where they are given over 3 m alone and the base is another. */
function limitsOver(limits: readonly ClassLimit[], baseM: number): readonly ClassLimit[] {
  return limits.flatMap((limit) => {
    if (limit.limit.overBase !== undefined) return overBase(limit, baseM) ?? [];
    return Math.abs(baseM - BASE_M) <= TOLERANCE_M ? [limit] : [];
  });
}

/** Of the class in force; while that is not known, of the slowest, against which twists are told apart. */
function twistLimits({ rules }: Context, bend?: Place['bend']): readonly ClassLimit[] {
  const { track, trackClass, place } = rules;
  const of = trackClass ?? track?.classes[0];
  return track === undefined || of === undefined
    ? []
    : limitsFor(track, of.id, 'twist3m', { ...place, bend });
}

/** How the track bends between two stations of a curve, where crosslevel is positive with the outer rail high. */
function bendBetween(context: Context, from: number, to: number): Place['bend'] {
  const { at } = stationColumn(context, 'crosslevel');
  const curvatures = stationCurvatures(context);
  const curvature = curvatures[to] ?? curvatures[from];
  const [a, b] = [at[from], at[to]];
  if (!a || !b || !curvature || curvature.value === 0) return undefined;
  return { radiusM: 1 / Math.abs(curvature.value), cantMm: (a.value + b.value) / 2 };
}

/** At each station the twist that comes closest to its limit, of the pairs that end there; by station. */
export const stationTwists = oncePerContext((context: Context): ReadonlyMap<string, Twist> => {
  const found = new Map<string, Twist>();
  const limits = twistLimits(context);
  if (limits.length === 0) return found;
  const given = limits.find(({ limit }) => limit.overBase !== undefined)?.limit.overBase;
  const [lowM, highM] =
    given === undefined ? [BASE_M - TOLERANCE_M, BASE_M + TOLERANCE_M] : [given.fromM, given.toM];
  const { stations } = context;
  const { at } = stationColumn(context, 'crosslevel');
  const { track, place } = context.rules;
  const hangsOnBend =
    place.onCurve && track?.limits.some((each) => each.quantity === 'twist3m' && each.cantOver !== undefined);
  const known = new Map<number, readonly ClassLimit[]>();
  const limitsAt = (base: number, bend: Place['bend']): readonly ClassLimit[] => {
    if (bend !== undefined) return limitsOver(twistLimits(context, bend), base);
    const over = known.get(base) ?? limitsOver(limits, base);
    known.set(base, over);
    return over;
  };
  const compare = (from: number, to: number, base: number): void => {
    const [a, b] = [at[from], at[to]];
    const station = stations[to];
    if (!a || !b || !station) return;
    const bend = hangsOnBend ? bendBetween(context, from, to) : undefined;
    const over = limitsAt(base, bend);
    const least = over.reduce((most, { value }) => Math.min(most, value), Infinity);
    const share = Math.abs(b.value - a.value) / least;
    if (over.length === 0 || share <= (found.get(station.id)?.share ?? -1)) return;
    found.set(station.id, {
      from,
      to,
      taken: difference(a, b),
      baseM: given === undefined ? undefined : base,
      bend,
      limits: over,
      share,
    });
  };
  // Stations stand in order of position: those too far back need not be looked at again.
  let first = 0;
  stations.forEach(({ positionM }, to) => {
    while (positionM - (stations[first]?.positionM ?? positionM) > highM + EXACT_M) first += 1;
    for (let from = first; from < to; from += 1) {
      const base = Math.round((positionM - (stations[from]?.positionM ?? NaN)) * 1000) / 1000;
      if (base >= lowM - EXACT_M) compare(from, to, base);
    }
  });
  return found;
});

/** Twist, where the rules in force limit it: at every station, and the worst of the sheet. */
export function twistFindings(context: Context): readonly Finding[] {
  if (twistLimits(context).length === 0) return [];
  const column = stationColumn(context, 'crosslevel');
  const heading: Heading = {
    part: 'track',
    method: twistMethod,
    what: 'twist3m',
    title: 'Greatest twist against its limit',
    subject: null,
    remarks: [...column.remarks, ...context.rules.remarks],
  };
  const all = [...stationTwists(context).values()];
  const worst = all.reduce<Twist | null>(
    (most, each) => (most === null || each.share > most.share ? each : most),
    null,
  );
  if (worst === null)
    return [
      notMeasured(heading, ['crosslevel at undisturbed stations a base of the limit apart, such as 3 m']),
    ];
  const between = ({ from, to, baseM }: Twist): string =>
    `From station ${context.stations[from]?.name} to station ${context.stations[to]?.name}, ${along(baseM ?? BASE_M)}.`;
  const finding = (of: Heading, twist: Twist): Finding =>
    measured(
      { ...of, remarks: [between(twist), ...(of.remarks ?? [])] },
      'crossLength',
      twist.taken,
      context.rules.trackClass === undefined ? [] : checkAll(twist.limits, twist.taken.value, twist.taken.u),
    );
  return [
    finding(heading, worst),
    ...all
      .sort((a, b) => a.to - b.to)
      .map((twist) => {
        const station = context.stations[twist.to];
        return finding(
          {
            part: 'track',
            method: twistMethod,
            what: 'twist',
            title: `Twist, station ${station?.name ?? '?'}`,
            subject: { kind: 'station', id: station?.id ?? '' },
          },
          twist,
        );
      }),
  ];
}
