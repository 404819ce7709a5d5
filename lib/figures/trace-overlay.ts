import type { CaseRecord } from '../case/record';
import type { ShapedTrace } from '../case/trace';
import { nameOfTrace } from '../case/trace-words';
import type { Method } from '../findings/finding';
import { takenShape, type ListedFeature } from '../findings/traced/taken-shape';
import { ok, type Result } from '../readings/result';
import { referenceShapesOf, shapeOfSection } from '../shapes';
import type { ReferenceShape } from '../shapes/shape';
import { wholeOutline } from '../shapes/whole-outline';
import { systemOf } from './case-marks';
import { earlierLines, raised, type EarlierTrace } from './earlier-traces';
import type { OutlineOverlayData } from './outline-overlay';
import { dimensionsOf } from './trace-dimensions';

/** Everything a picture of one trace and the table beside it show. */
export type TraceOverlay = {
  readonly overlay: OutlineOverlayData;
  readonly features: readonly ListedFeature[];
  readonly remarks: readonly string[];
  readonly method: Method;
  /** Null where no shape of the kind is known: a rail of another section. */
  readonly reference: ReferenceShape | null;
};

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
  const taken = takenShape(record, trace, seed);
  if (!taken.ok) return taken;
  const { outline, unwornMm, listed, remarks, method } = taken.value;
  const system = systemOf(record);
  const reference = referenceOf(record, trace);
  return ok({
    features: listed,
    remarks,
    method,
    reference,
    overlay: {
      shape: trace.shape,
      system,
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
      dimensions: dimensionsOf(taken.value, system),
      earlier: earlierLines(record, unwornMm, earlier),
    },
  });
}
