import type { CaseRecord } from '~/lib/case/record';
import type { Trace } from '~/lib/case/trace';
import type { Source } from '~/lib/findings/finding';
import type { Outline } from '~/lib/outline/outline';
import { outlineOfPairs } from '~/lib/outline/pairs';
import { outlineOfShape } from '~/lib/shapes/shape';
import { referenceShapesOf, shapeOfSection } from '~/lib/shapes';

/** A shape a trace can be laid over: one of the program's, or one of the users'. */
export type Reference = {
  readonly id: string;
  readonly name: string;
  readonly status: Source['status'] | 'own shape';
  readonly source: string;
  readonly notes: readonly string[];
  readonly outline: (part: 'whole' | 'running') => Outline;
};

const STEP_MM = 0.25;

/** Every shape that a trace of this kind can be laid over, the program's own first; of a point there is none. */
export function referencesFor(record: CaseRecord, shape: Trace['shape']): readonly Reference[] {
  if (shape === 'point') return [];
  const built = referenceShapesOf(shape).map((each): Reference => ({
    id: each.id,
    name: each.name,
    status: each.source.status,
    source: each.source.text,
    notes: each.notes,
    outline: (part) => outlineOfShape(each, STEP_MM, part),
  }));
  const own = record.ownShapes
    .filter((each) => each.shape === shape && each.removed === null)
    .map(({ id, name, source, pointsMm }): Reference => ({
      id,
      name,
      status: 'own shape',
      source,
      notes: [],
      outline: () => outlineOfPairs(pointsMm),
    }));
  return [...built, ...own];
}

/** The shape asked for; else that of the rail's section, else the first there is. */
export function referenceOf(record: CaseRecord, trace: Trace, asked: string | null): Reference | null {
  const all = referencesFor(record, trace.shape);
  const rail = record.entities.rail.find(({ id }) => id === trace.subject.id);
  const section = trace.shape === 'rail' ? shapeOfSection(String(rail?.fields.section ?? '')) : null;
  return all.find(({ id }) => id === asked) ?? all.find(({ id }) => id === section?.id) ?? all.at(0) ?? null;
}
