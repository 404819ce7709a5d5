import type { CaseRecord } from '../case/record';
import type { Trace } from '../case/trace';
import { nameOfTrace } from '../case/trace-words';
import type { Method } from '../findings/finding';
import { outlineOf, type Outline } from '../outline/outline';
import { outlineOfPairs } from '../outline/pairs';
import { RAIL_FEATURES } from '../rail/features';
import { registerRail } from '../rail/register';
import { railTraceFeatures } from '../rail/trace-features';
import { ok, type Result } from '../readings/result';
import type { Dimension } from '../readings/unit';
import { referenceShapesOf, shapeOfSection } from '../shapes';
import type { ReferenceShape } from '../shapes/shape';
import { newSectionOf, tracedOutline } from '../shapes/traced-outline';
import { wholeOutline } from '../shapes/whole-outline';
import { WHEEL_FEATURES } from '../wheel/feature-table';
import { wheelTraceFeatures } from '../wheel/trace-features';
import { systemOf } from './case-marks';
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

function take(record: CaseRecord, trace: Trace, seed: number): Result<Taken> {
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

/** An older trace in its own frame, with the height of the new top of a rail. */
function placedWith(
  record: CaseRecord,
  trace: Trace,
): Result<{ readonly outline: Outline; readonly unwornMm: number }> {
  if (trace.shape === 'wheel') {
    const wheel = tracedOutline(record, trace);
    return wheel.ok ? ok({ outline: wheel.value, unwornMm: 0 }) : wheel;
  }
  const rail = registerRail(outlineOfPairs(trace.pointsMm), {
    mirrored: trace.mirrored,
    reference: newSectionOf(record, trace),
    hand: trace.hand,
  });
  return rail.ok ? ok({ outline: rail.value.outline, unwornMm: rail.value.newTopMm ?? 0 }) : rail;
}

function referenceOf(record: CaseRecord, trace: Trace): ReferenceShape | null {
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
  trace: Trace,
  seed: number,
  earlier: readonly { readonly trace: Trace; readonly label: string }[] = [],
): Result<TraceOverlay> {
  const taken = take(record, trace, seed);
  if (!taken.ok) return taken;
  const { outline, unwornMm, dimensions, ...said } = taken.value;
  const reference = referenceOf(record, trace);
  const laid = (line: Outline, itsUnwornMm: number): Outline =>
    outlineOf(
      line.xMm,
      line.yMm.map((y) => y + unwornMm - itsUnwornMm),
    );
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
              outline: laid(wholeOutline(reference), 0),
            },
      dimensions,
      earlier: earlier.flatMap(({ trace: older, label }) => {
        const placed = placedWith(record, older);
        return placed.ok ? [{ label, outline: laid(placed.value.outline, placed.value.unwornMm) }] : [];
      }),
    },
  });
}
