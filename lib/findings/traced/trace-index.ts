import type { CaseRecord, Disturbance } from '../../case/record';
import type { Trace } from '../../case/trace';
import type { Keep } from '../long-sum';
import { stateOf, type LeftOutWhy } from '../reading-state';
import { tracedFeatures, type TracedFeatures } from './trace-features';

/** A wheel of a wheelset, or a rail, whose one outline has no slot. */
export type TracedPart = { readonly kind: 'wheelset' | 'rail'; readonly id: string; readonly slot: string };

export type TraceIndex = {
  /** Undisturbed outlines of a part, oldest first; the last stands for it. */
  readonly undisturbed: (part: TracedPart) => readonly Trace[];
  /** Why none stands although it was traced; null when it was not traced or one stands. */
  readonly leftOut: (part: TracedPart) => LeftOutWhy | null;
  /** Why other outlines of the part are left out beside one that stands. */
  readonly leftOutBeside: (part: TracedPart) => readonly LeftOutWhy[];
  readonly features: (trace: Trace) => TracedFeatures;
  /** Shapes of which an outline is in the case, disturbed or not. */
  readonly any: (kind: TracedPart['kind']) => boolean;
};

/** Older first; what has no date comes in the order it was entered. */
const byTime = (a: Trace, b: Trace): number =>
  (a.takenAt ?? '').localeCompare(b.takenAt ?? '') || a.order - b.order;

const asDisturbance = (field: unknown): Disturbance =>
  field === 'undisturbed' || field === 'disturbed' || field === 'repaired' ? field : 'notSaid';

const keyOf = ({ kind, id, slot }: TracedPart): string => `${kind}|${id}|${slot}`;

/**
 * The outlines of a record by wheel and rail. An outline counts as undisturbed when it or its wheelset or
 * rail says so and neither says otherwise, as a reading does.
 */
export function indexTraces(record: CaseRecord, seed: number, keep: Keep): TraceIndex {
  const standing = record.traces.filter(({ removed }) => removed === null).sort(byTime);
  const parts = new Map<string, { readonly undisturbed: Trace[]; readonly leftOut: LeftOutWhy[] }>();
  for (const trace of standing) {
    const { kind, id } = trace.subject;
    const subject = record.entities[kind].find((each) => each.id === id && each.removed === null);
    if (subject === undefined) continue;
    const key = keyOf({ kind, id, slot: kind === 'wheelset' ? trace.side : '' });
    const part = parts.get(key) ?? { undisturbed: [], leftOut: [] };
    parts.set(key, part);
    const state = stateOf(trace.disturbance, asDisturbance(subject.fields.disturbance));
    if (state === 'undisturbed') part.undisturbed.push(trace);
    else part.leftOut.push(state);
  }
  const features = new Map<Trace, TracedFeatures>();
  return {
    undisturbed: (part) => parts.get(keyOf(part))?.undisturbed ?? [],
    leftOut: (part) => {
      const found = parts.get(keyOf(part));
      return found === undefined || found.undisturbed.length > 0 ? null : (found.leftOut[0] ?? null);
    },
    leftOutBeside: (part) => parts.get(keyOf(part))?.leftOut ?? [],
    features: (trace) => {
      const known = features.get(trace) ?? keep(tracedFeatures(record, trace, seed));
      features.set(trace, known);
      return known;
    },
    any: (kind) => standing.some(({ subject }) => subject.kind === kind),
  };
}
