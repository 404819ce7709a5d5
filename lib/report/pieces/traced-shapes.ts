import { standing } from '../../case/current';
import type { CaseRecord, Entity } from '../../case/record';
import { isShaped, type ShapedTrace, type Trace } from '../../case/trace';
import type { Context } from '../../findings/context';

/** Older first; what has no date comes in the order it was entered. */
const byTime = (a: Trace, b: Trace): number =>
  (a.takenAt ?? '').localeCompare(b.takenAt ?? '') || a.order - b.order;

/** The traces of one wheel or rail, oldest first. */
export type TracedThing = {
  readonly entity: Entity;
  readonly side: Trace['side'];
  readonly traces: readonly [ShapedTrace, ...ShapedTrace[]];
};

const tracesOf = ({ traces }: CaseRecord, entity: Entity, side?: Trace['side']): readonly ShapedTrace[] =>
  traces
    .filter(isShaped)
    .filter(
      (trace) =>
        trace.removed === null &&
        trace.subject.id === entity.id &&
        (side === undefined || trace.side === side),
    )
    .sort(byTime);

const thing = (record: CaseRecord, entity: Entity, side?: Trace['side']): readonly TracedThing[] => {
  const [first, ...rest] = tracesOf(record, entity, side);
  return first === undefined ? [] : [{ entity, side: first.side, traces: [first, ...rest] }];
};

/** Wheels of the first derailed wheelset that were traced, left before right. */
export function tracedWheels({ record, first }: Context): readonly TracedThing[] {
  const wheelset = first.wheelset?.entity;
  return wheelset === undefined
    ? []
    : (['left', 'right'] as const).flatMap((side) => thing(record, wheelset, side));
}

/** Rails that were traced, left before right, in the order of the record. */
export const tracedRails = ({ record }: Context): readonly TracedThing[] =>
  standing(record, 'rail')
    .flatMap((rail) => thing(record, rail))
    .sort((a, b) => a.side.localeCompare(b.side));

/** The trace that stands for a wheel or rail now: the latest. */
export const latest = ({ traces }: TracedThing): ShapedTrace => traces[traces.length - 1] ?? traces[0];
