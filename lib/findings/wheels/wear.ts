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
import { featureOf } from '../traced/trace-features';
import { axleName, vehicleTypeOf } from './wheel-title';

type Wears = {
  readonly feature: Readonly<Record<UnitSystem, WheelFeatureId>>;
  readonly limit: RuleQuantityId;
  readonly sense: 'min' | 'max';
};

/** What wears, and the limit it wears towards. Flange thickness is taken where the units of the case take it. */
const WEARS: readonly Wears[] = [
  {
    feature: { us: 'flangeThicknessNa', metric: 'flangeThickness' },
    limit: 'flangeThickness',
    sense: 'min',
  },
  { feature: { us: 'flangeHeight', metric: 'flangeHeight' }, limit: 'flangeHeight', sense: 'max' },
  { feature: { us: 'treadHollow', metric: 'treadHollow' }, limit: 'treadHollow', sense: 'max' },
];

/** One feature of one wheel over the distance it had run. */
export type WornFeature = {
  readonly feature: WheelFeatureEntry;
  readonly side: Trace['side'];
  readonly history: WearHistory;
  /** How the limit is called; null when none is held against it. */
  readonly limit: string | null;
  /** The outlines behind the points, in the order of distance run. */
  readonly traces: readonly Trace[];
};

/**
 * Wear of a wheelset from its dated, undisturbed outlines with the distance each had run; a feature
 * with fewer than two such outlines is left out.
 */
export function wornFeatures(context: Context, wheelset: Entity): readonly WornFeature[] {
  const system: UnitSystem = context.record.fields.units === 'metric' ? 'metric' : 'us';
  return (['left', 'right'] as const).flatMap((side) => {
    const dated = context.traces
      .undisturbed({ kind: 'wheelset', id: wheelset.id, slot: side })
      .flatMap((trace) =>
        trace.distanceRunKm === null ? [] : [{ trace, distanceRunKm: trace.distanceRunKm }],
      )
      .sort((a, b) => a.distanceRunKm - b.distanceRunKm);
    if (dated.length < 2) return [];
    return WEARS.flatMap(({ feature, limit, sense }): readonly WornFeature[] => {
      const id = feature[system];
      const points = dated.flatMap(({ trace, distanceRunKm }) => {
        const found = featureOf(context.traces.features(trace), id);
        return found.kind === 'found' && found.u > 0
          ? [{ trace, distanceRunKm, valueMm: found.value, uMm: found.u }]
          : [];
      });
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
          traces: points.map(({ trace }) => trace),
        },
      ];
    });
  });
}

/** Rate of wear of each wheel traced more than once, and where a limit would be reached. */
export const wearFindings = (context: Context): readonly Finding[] =>
  standing(context.record, 'wheelset').flatMap((wheelset) =>
    wornFeatures(context, wheelset).map((worn) => rateOf(context, wheelset, worn)),
  );

function rateOf(context: Context, wheelset: Entity, worn: WornFeature): Finding {
  const { feature, side, history, limit, traces } = worn;
  const system: UnitSystem = context.record.fields.units === 'metric' ? 'metric' : 'us';
  const rate = system === 'us' ? history.per100000Miles : history.per100000Km;
  const [first, ...others] = traces.map(({ id }) => id);
  const heading: Heading = {
    part: 'wheels',
    method: wearHistoryMethod,
    what: 'wearRate',
    title: `${feature.name} of the ${side} wheel, change per 100,000 ${system === 'us' ? 'miles' : 'km'}, ${axleName(context, wheelset)}`,
    subject: { kind: 'wheelset', id: wheelset.id },
    slot: `${side}.${feature.id}`,
    remarks: [
      `From ${traces.length} outlines; the interval is ${intervalText(history)}.`,
      reachText(history, limit, system),
    ],
  };
  return measured(heading, 'crossLength', {
    value: rate.value,
    // Twice this is half the 95 % interval.
    u: (rate.high - rate.low) / 4,
    readings: [first ?? '', ...others],
    remarks: [],
  });
}
