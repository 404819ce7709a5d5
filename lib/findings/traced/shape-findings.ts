import { standing } from '../../case/current';
import { nameOfEntity } from '../../case/name-of';
import { RAIL_FEATURES, type RailFeatureId } from '../../rail/features';
import { railTraceMethod } from '../../rail/trace-features';
import type { Dimension } from '../../readings/unit';
import { WHEEL_FEATURES, type WheelFeatureId } from '../../wheel/feature-table';
import { wheelTraceMethod } from '../../wheel/trace-features';
import { measured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';
import { axleName } from '../wheels/wheel-title';
import { featureOf, type TracedFeatureId } from './trace-features';
import type { TracedPart } from './trace-index';
import { traceRemarks } from './with-traces';

/** What only an outline shows; the rest stands in the place of readings. */
const OF_WHEELS: readonly WheelFeatureId[] = ['qR', 'treadSlope', 'falseFlange', 'rootRadius', 'tipRadius'];
const OF_RAILS: readonly RailFeatureId[] = ['headWidth', 'headAreaLoss'];

type Entry = { readonly id: TracedFeatureId; readonly name: string; readonly dimension: Dimension };

/** Features of the outlines that no reading of the catalogue is of. */
export const shapeFindings = (context: Context): readonly Finding[] => [
  ...standing(context.record, 'wheelset').flatMap((wheelset) =>
    (['left', 'right'] as const).flatMap((slot) =>
      found(
        context,
        { kind: 'wheelset', id: wheelset.id, slot },
        WHEEL_FEATURES.filter(({ id }) => OF_WHEELS.includes(id)),
        `${slot} wheel, ${axleName(context, wheelset)}`,
      ),
    ),
  ),
  ...standing(context.record, 'rail').flatMap((rail) =>
    found(
      context,
      { kind: 'rail', id: rail.id, slot: '' },
      RAIL_FEATURES.filter(({ id }) => OF_RAILS.includes(id)),
      nameOfEntity(context.record, 'rail', rail),
    ),
  ),
];

function found(
  context: Context,
  part: TracedPart,
  entries: readonly Entry[],
  of: string,
): readonly Finding[] {
  const trace = context.traces.undisturbed(part).at(-1);
  if (trace === undefined) return [];
  const features = context.traces.features(trace);
  return entries.flatMap(({ id, name, dimension }): readonly Finding[] => {
    const feature = featureOf(features, id);
    if (feature.kind === 'missing') return [];
    const heading: Heading = {
      part: part.kind === 'rail' ? 'rails' : 'wheels',
      method: part.kind === 'rail' ? railTraceMethod : wheelTraceMethod,
      what: id,
      title: `${name}, ${of}`,
      subject: { kind: part.kind, id: part.id },
      slot: part.slot,
    };
    return [
      measured(heading, dimension, {
        value: feature.value,
        u: feature.u,
        readings: [trace.id],
        remarks: traceRemarks(trace),
      }),
    ];
  });
}
