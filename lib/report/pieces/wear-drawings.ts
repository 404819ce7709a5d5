import { wearChart } from '../../figures/wear-chart';
import type { RuleQuantityId } from '../../rules/rule-quantity';
import { vehicleTypeOf } from '../../findings/wheels/wheel-title';
import { FINDING_SEED } from '../../findings/context';
import { WHEEL_FEATURES, type WheelFeatureId } from '../../wheel/feature-table';
import { wheelTraceFeatures } from '../../wheel/trace-features';
import { wearHistory } from '../../wheel/wear-history';
import type { Report } from '../report';
import { faint } from '../type/inline';
import type { Writer } from '../writer';
import { localTime } from '../words';
import { tracedWheels, type TracedThing } from './traced-shapes';

const WIDTH = 600;

type Worn = { readonly id: WheelFeatureId; readonly limits: RuleQuantityId; readonly sense: 'min' | 'max' };

/** What wears, and the limit it wears towards. */
const WORN: Readonly<Record<'us' | 'metric', readonly Worn[]>> = {
  us: [
    { id: 'flangeThicknessNa', limits: 'flangeThickness', sense: 'min' },
    { id: 'flangeHeight', limits: 'flangeHeight', sense: 'max' },
    { id: 'treadHollow', limits: 'treadHollow', sense: 'max' },
  ],
  metric: [
    { id: 'flangeThickness', limits: 'flangeThickness', sense: 'min' },
    { id: 'flangeHeight', limits: 'flangeHeight', sense: 'max' },
    { id: 'treadHollow', limits: 'treadHollow', sense: 'max' },
  ],
};

/** Wear of each traced wheel of the first derailed wheelset over the distance it had run. */
export function wearDrawings(report: Report, writer: Writer): void {
  const things = tracedWheels(report.context).filter(
    ({ traces }) => traces.filter(({ distanceRunKm }) => distanceRunKm !== null).length > 1,
  );
  if (things.length === 0) {
    writer.text([
      faint(
        'A history of wear was not recorded: it takes two traces or more of one wheel, each with the distance it had run.',
      ),
    ]);
    return;
  }
  for (const thing of things) wearOf(report, writer, thing);
}

function wearOf(report: Report, writer: Writer, { entity, side, traces }: TracedThing): void {
  const { system, context } = report;
  const taken = traces.flatMap((trace) => {
    const features = wheelTraceFeatures(trace, FINDING_SEED);
    return trace.distanceRunKm === null || !features.ok
      ? []
      : [{ trace, distanceRunKm: trace.distanceRunKm, features: features.value.features }];
  });
  for (const { id, limits, sense } of WORN[system]) {
    const entry = WHEEL_FEATURES.find((each) => each.id === id);
    const points = taken
      .flatMap(({ trace, distanceRunKm, features }) => {
        const found = features[id];
        return found.ok && found.value.u > 0
          ? [{ trace, distanceRunKm, valueMm: found.value.value, uMm: found.value.u }]
          : [];
      })
      .sort((a, b) => a.distanceRunKm - b.distanceRunKm);
    const rule = context.rules
      .equipmentLimits(vehicleTypeOf(context, entity), limits)
      .find(({ limit }) => limit.sense === sense);
    const history = wearHistory(points, rule?.value ?? null, sense);
    if (entry === undefined || !history.ok) continue;
    writer.figure(
      wearChart(
        {
          system,
          feature: entry.name,
          name: `${side} wheel`,
          history: history.value,
          limit:
            rule === undefined
              ? null
              : `${sense === 'min' ? 'at least' : 'at most'} ${rule.printed}, ${rule.limit.citation}`,
          dates: points.map(({ trace }) =>
            trace.takenAt === null ? 'no date' : localTime(trace.takenAt.slice(0, 10)),
          ),
        },
        { width: WIDTH },
      ),
      `${entry.name} of the ${side} wheel over the distance run since new or since turned.`,
    );
  }
}
