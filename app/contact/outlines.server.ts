import { localTime } from '~/app/times';
import { nameOf } from '~/lib/case/name-of';
import { standing } from '~/lib/case/current';
import type { CaseRecord } from '~/lib/case/record';
import type { Trace } from '~/lib/case/trace';
import { tracedRail, tracedWheel } from '~/lib/findings/contact/traced-shape';
import type { Context } from '~/lib/findings/context';
import type { Outline } from '~/lib/outline/outline';
import { ok, refuse, type Result } from '~/lib/readings/result';
import { referenceShape, referenceShapesOf, shapeOfSection } from '~/lib/shapes';
import { outlineOfShape } from '~/lib/shapes/shape';
import { tracedOutline } from '~/lib/shapes/traced-outline';
import type { Place } from './places';

export type OutlineChoice = { readonly id: string; readonly label: string };

/** Latest first: the latest stands for a wheel or rail, earlier ones are its history. */
const tracesAt = ({ traces }: CaseRecord, { shape, side }: Place): readonly Trace[] =>
  traces
    .filter((trace) => trace.removed === null && trace.shape === shape && trace.side === side)
    .sort((a, b) => (b.takenAt ?? '').localeCompare(a.takenAt ?? '') || b.order - a.order);

/** What can stand at a place: the traces of the case, then new shapes, which are nobody's wheel or rail. */
export const outlineChoices = (record: CaseRecord, place: Place): readonly OutlineChoice[] => [
  ...tracesAt(record, place).map((trace) => ({
    id: `trace:${trace.id}`,
    label: `Traced: ${nameOf(record, trace.subject)}${trace.takenAt ? `, ${localTime(trace.takenAt)}` : ''}${trace.disturbance === 'disturbed' ? ', disturbed' : ''}`,
  })),
  ...referenceShapesOf(place.shape).map(({ id, name, source }) => ({
    id: `new:${id}`,
    label: `New shape: ${name} (${source.status})`,
  })),
];

/** The outlines that the findings stand on each other; else a new shape. */
export function usualChoice(context: Context, place: Place): string {
  const traced = place.shape === 'wheel' ? tracedWheel(context, place.side) : tracedRail(context, place.side);
  if (traced) return `trace:${traced.trace.id}`;
  const { record } = context;
  const rail = standing(record, 'rail').find(({ fields }) => fields.rail === place.side);
  const section = place.shape === 'rail' ? shapeOfSection(String(rail?.fields.section ?? '')) : null;
  return `new:${(section ?? referenceShapesOf(place.shape)[0])?.id ?? ''}`;
}

/** The outline that a choice names, in the frame of its shape. */
export function chosenOutline(record: CaseRecord, place: Place, choice: string): Result<Outline> {
  const [kind, id = ''] = choice.split(':');
  if (kind === 'trace') {
    const trace = tracesAt(record, place).find((each) => each.id === id);
    if (!trace) return refuse(`${place.label}: this outline is no longer in the case. Choose another.`);
    const outline = tracedOutline(record, trace);
    return outline.ok ? outline : refuse(`${place.label}: ${outline.message}`);
  }
  const shape = referenceShape(id);
  if (shape?.shape !== place.shape) return refuse(`${place.label}: choose one of the list.`);
  return ok(outlineOfShape(shape, undefined, 'running'));
}
