import { standing } from '../../case/current';
import type { Entity } from '../../case/record';
import type { Trace } from '../../case/trace';
import type { UnitSystem } from '../../readings/unit';
import type { RuleQuantityId } from '../../rules/rule-quantity';
import { WHEEL_FEATURES, type WheelFeatureEntry, type WheelFeatureId } from '../../wheel/feature-table';
import { wearHistory, wearHistoryMethod, type WearHistory } from '../../wheel/wear-history';
import { intervalText, reachText } from '../../wheel/wear-words';
import { measured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';
import { measuringPractice } from '../practice';
import { featureOf } from '../traced/trace-features';
import { axleName, vehicleTypeOf } from './wheel-title';

type Wears = {
  /** What is read of it; null: only outlines show it. */
  readonly quantity: string | null;
  readonly feature: WheelFeatureId;
  readonly limit: RuleQuantityId;
  readonly sense: 'min' | 'max';
  /** Where outlines are not measured so, it is not taken from them. */
  readonly onlyBy?: UnitSystem;
};

/**
 * What wears, and the limit it wears towards. A flange is read 3/8 in above the tread; from outlines
 * it is taken where the limits in force take it.
 */
const WEARS: readonly Wears[] = [
  {
    quantity: 'flangeThickness',
    feature: 'flangeThicknessNa',
    limit: 'flangeThickness',
    sense: 'min',
    onlyBy: 'us',
  },
  {
    quantity: null,
    feature: 'flangeThickness',
    limit: 'flangeThickness',
    sense: 'min',
    onlyBy: 'metric',
  },
  { quantity: 'flangeHeight', feature: 'flangeHeight', limit: 'flangeHeight', sense: 'max' },
  { quantity: 'treadHollow', feature: 'treadHollow', limit: 'treadHollow', sense: 'max' },
];

/** One feature of one wheel over the distance it had run. */
export type WornFeature = {
  readonly feature: WheelFeatureEntry;
  readonly side: Trace['side'];
  readonly history: WearHistory;
  /** How the limit is called; null when none is held against it. */
  readonly limit: string | null;
  /** Day and origin of each point, in the order of distance run: an outline, or a reading with that of the distance. */
  readonly from: readonly { readonly day: string | null; readonly ids: readonly [string, ...string[]] }[];
};

type Dated = {
  readonly day: string | null;
  readonly distanceRunKm: number;
  readonly valueMm: number;
  readonly uMm: number;
  readonly ids: readonly [string, ...string[]];
};

const M_PER_KM = 1000;

function tracedPoints(context: Context, wheelset: Entity, side: Trace['side'], id: WheelFeatureId): Dated[] {
  return context.traces
    .undisturbed({ kind: 'wheelset', id: wheelset.id, slot: side })
    .flatMap((trace): Dated[] => {
      const { distanceRunKm } = trace;
      const found = distanceRunKm === null ? null : featureOf(context.traces.features(trace), id);
      return distanceRunKm === null || found?.kind !== 'found'
        ? []
        : [
            {
              day: trace.takenAt?.slice(0, 10) ?? null,
              distanceRunKm,
              valueMm: found.value,
              uMm: found.u,
              ids: [trace.id],
            },
          ];
    });
}

/** Readings of a day on which the distance run was read as well, where no outline of that day says it better. */
function readPoints(
  context: Context,
  wheelset: Entity,
  side: Trace['side'],
  quantity: string,
  traced: readonly Dated[],
): Dated[] {
  const distances = new Map(
    context.read.dated(wheelset.id, 'distanceRun').map((each) => [each.day, each] as const),
  );
  const days = new Set(traced.map(({ day }) => day));
  return context.read.dated(wheelset.id, quantity, side).flatMap(({ day, value, u, reading }): Dated[] => {
    const distance = distances.get(day);
    return distance === undefined || days.has(day)
      ? []
      : [
          {
            day,
            distanceRunKm: distance.value / M_PER_KM,
            valueMm: value,
            uMm: u,
            ids: [reading, distance.reading],
          },
        ];
  });
}

/**
 * Wear of a wheelset from its undisturbed outlines with the distance each had run, and from readings
 * taken on a day on which the distance run was read; a feature known at fewer than two distances is
 * left out.
 */
export function wornFeatures(context: Context, wheelset: Entity): readonly WornFeature[] {
  const practice = measuringPractice(context);
  return (['left', 'right'] as const).flatMap((side) =>
    WEARS.flatMap(({ quantity, feature: id, limit, sense, onlyBy }): readonly WornFeature[] => {
      const measuredSo = onlyBy === undefined || onlyBy === practice;
      const traced = measuredSo ? tracedPoints(context, wheelset, side, id) : [];
      const read = quantity === null ? [] : readPoints(context, wheelset, side, quantity, traced);
      const points = [...traced, ...read]
        .filter(({ uMm }) => uMm > 0)
        .sort((a, b) => a.distanceRunKm - b.distanceRunKm);
      const rule = context.rules
        .equipmentLimits(vehicleTypeOf(context, wheelset), limit)
        .find((each) => each.limit.sense === sense);
      const history = wearHistory(points, rule?.value ?? null, sense);
      const entry = WHEEL_FEATURES.find((each) => each.id === id);
      if (entry === undefined || !history.ok) return [];
      return [
        {
          feature: entry,
          side,
          history: history.value,
          limit:
            rule === undefined
              ? null
              : `${sense === 'min' ? 'at least' : 'at most'} ${rule.printed}, ${rule.limit.citation}`,
          from: points.map(({ day, ids }) => ({ day, ids })),
        },
      ];
    }),
  );
}

/** Rate of wear of each wheel known at two distances or more, and where a limit would be reached. */
export const wearFindings = (context: Context): readonly Finding[] =>
  standing(context.record, 'wheelset').flatMap((wheelset) =>
    wornFeatures(context, wheelset).map((worn) => rateOf(context, wheelset, worn)),
  );

function rateOf(context: Context, wheelset: Entity, worn: WornFeature): Finding {
  const { feature, side, history, limit, from } = worn;
  const system = measuringPractice(context);
  const rate = system === 'us' ? history.per100000Miles : history.per100000Km;
  const [first = '', ...others] = new Set(from.flatMap(({ ids }) => ids));
  const heading: Heading = {
    part: 'wheels',
    method: wearHistoryMethod,
    what: 'wearRate',
    title: `${feature.name} of the ${side} wheel, change per 100,000 ${system === 'us' ? 'miles' : 'km'}, ${axleName(context, wheelset)}`,
    subject: { kind: 'wheelset', id: wheelset.id },
    slot: `${side}.${feature.id}`,
    remarks: [
      `From ${from.length} outlines or readings with the distance run; the interval is ${intervalText(history)}.`,
      reachText(history, limit, system),
    ],
  };
  return measured(heading, 'crossLength', {
    value: rate.value,
    // Twice this is half the 95 % interval.
    u: (rate.high - rate.low) / 4,
    readings: [first, ...others],
    remarks: [],
  });
}
