import type { CaseRecord } from '../case/record';
import type { ShapedTrace } from '../case/trace';
import { nameOfTrace } from '../case/trace-words';
import type { Method } from '../findings/finding';
import type { Outline } from '../outline/outline';
import { RAIL_FEATURES } from '../rail/features';
import { railTraceFeatures } from '../rail/trace-features';
import { ok, type Result } from '../readings/result';
import type { Dimension } from '../readings/unit';
import { referenceShapesOf, shapeOfSection } from '../shapes';
import type { ReferenceShape } from '../shapes/shape';
import { newSectionOf } from '../shapes/traced-outline';
import { wholeOutline } from '../shapes/whole-outline';
import { WHEEL_FEATURES } from '../wheel/feature-table';
import { wheelTraceFeatures } from '../wheel/trace-features';
import { systemOf } from './case-marks';
import { earlierLines, raised, type EarlierTrace } from './earlier-traces';
import type { OutlineOverlayData } from './outline-overlay';
import { railDimensions, wheelDimensions } from './trace-dimensions';

export type TraceFeature = {
  readonly id: string;
  readonly name: string;
  readonly dimension: Dimension;
  readonly meaning: string;
  /** mm, rad or 1, with its standard uncertainty. */
  readonly found: Result<{ readonly value: number; readonly u: number }>;
};

/** Everything a picture of one trace and the table beside it show. */
export type TraceOverlay = {
  readonly overlay: OutlineOverlayData;
  readonly features: readonly TraceFeature[];
  readonly remarks: readonly string[];
  readonly method: Method;
  /** Null where no shape of the kind is known: a rail of another section. */
  readonly reference: ReferenceShape | null;
};

type Taken = Pick<TraceOverlay, 'features' | 'remarks' | 'method'> & {
  readonly outline: Outline;
  /** Height of a new rail's top above the worn one, mm; 0 for a wheel, which the drawing lays at its tip. */
  readonly unwornMm: number;
  readonly dimensions: OutlineOverlayData['dimensions'];
};

function take(record: CaseRecord, trace: ShapedTrace, seed: number): Result<Taken> {
  const system = systemOf(record);
  if (trace.shape === 'wheel') {
    const wheel = wheelTraceFeatures(trace, seed);
    if (!wheel.ok) return wheel;
    const { outline, features, remarks, method } = wheel.value;
    return ok({
      outline,
      remarks,
      method,
      unwornMm: 0,
      features: WHEEL_FEATURES.map((entry) => ({ ...entry, found: features[entry.id] })),
      dimensions: wheelDimensions(outline, features, system),
    });
  }
  const rail = railTraceFeatures(trace, newSectionOf(record, trace), seed);
  if (!rail.ok) return rail;
  const { outline, newTopMm, features, remarks, method } = rail.value;
  return ok({
    outline,
    remarks,
    method,
    unwornMm: newTopMm ?? 0,
    features: RAIL_FEATURES.map((entry) => ({ ...entry, found: features[entry.id] })),
    dimensions: railDimensions(outline, features, system),
  });
}

function referenceOf(record: CaseRecord, trace: ShapedTrace): ReferenceShape | null {
  if (trace.shape === 'wheel') return referenceShapesOf('wheel')[0] ?? null;
  const rail = record.entities.rail.find(({ id }) => id === trace.subject.id);
  return shapeOfSection(String(rail?.fields.section ?? ''));
}

/**
 * A trace of the case over the shape of its kind: the rail's section, the usual freight wheel. `earlier`:
 * older traces of the same wheel or rail, latest first; one that cannot be placed is left out. Refuses
 * what registration refuses, with what to do.
 */
export function traceOverlay(
  record: CaseRecord,
  trace: ShapedTrace,
  seed: number,
  earlier: readonly EarlierTrace[] = [],
): Result<TraceOverlay> {
  const taken = take(record, trace, seed);
  if (!taken.ok) return taken;
  const { outline, unwornMm, dimensions, ...said } = taken.value;
  const reference = referenceOf(record, trace);
  return ok({
    ...said,
    reference,
    overlay: {
      shape: trace.shape,
      system: systemOf(record),
      name: nameOfTrace(record, trace).replace(/^Outline, /, ''),
      traced: outline,
      uAcrossMm: trace.uncertainty.acrossMm,
      reference:
        reference === null
          ? null
          : {
              name: reference.name,
              status: reference.source.status,
              outline: raised(wholeOutline(reference), unwornMm),
            },
      dimensions,
      earlier: earlierLines(record, unwornMm, earlier),
    },
  });
}
