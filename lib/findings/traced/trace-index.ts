import type { CaseRecord, Disturbance } from '../../case/record';
import type { Trace } from '../../case/trace';
import type { Keep } from '../long-sum';
import { stateOf, type LeftOutWhy } from '../reading-state';
import { tracedFeatures, type TracedFeatures } from './trace-features';

/** A wheel of a wheelset, or a rail, whose one outline has no slot. */
export type TracedPart = { readonly kind: 'wheelset' | 'rail'; readonly id: string; readonly slot: string };

/** A cross-section of a point that was traced, at one distance behind its tip. */
export type TracedSection = {
  readonly behindMm: number;
  /** The latest undisturbed outline, which stands for it; null when none is. */
  readonly trace: Trace | null;
  /** Number of older undisturbed ones. */
  readonly earlier: number;
  /** Why others are left out. */
  readonly leftOut: readonly LeftOutWhy[];
};

export type TraceIndex = {
  /** Undisturbed outlines of a part, oldest first; the last stands for it. */
  readonly undisturbed: (part: TracedPart) => readonly Trace[];
  /** Why none stands although it was traced; null when it was not traced or one stands. */
  readonly leftOut: (part: TracedPart) => LeftOutWhy | null;
  /** Why other outlines of the part are left out beside one that stands. */
  readonly leftOutBeside: (part: TracedPart) => readonly LeftOutWhy[];
  /** The cross-sections of one point of a turnout that were traced, from the tip back. */
  readonly alongPoint: (turnout: string, side: Trace['side']) => readonly TracedSection[];
  readonly features: (trace: Trace) => TracedFeatures;
  /** Shapes of which an outline is in the case, disturbed or not. */
  readonly any: (kind: TracedPart['kind']) => boolean;
};

/** Older first; what has no date comes in the order it was entered. */
const byTime = (a: Trace, b: Trace): number =>
  (a.takenAt ?? '').localeCompare(b.takenAt ?? '') || a.order - b.order;

const asDisturbance = (field: unknown): Disturbance =>
  field === 'undisturbed' || field === 'disturbed' || field === 'repaired' ? field : 'notSaid';

type Part = { readonly undisturbed: Trace[]; readonly leftOut: LeftOutWhy[] };

const keyOf = ({ kind, id, slot }: TracedPart): string => `${kind}|${id}|${slot}`;

function partOf(parts: Map<string, Part>, { subject: { kind, id }, side }: Trace): Part {
  const key = `${kind}|${id}|${kind === 'wheelset' ? side : ''}`;
  const part = parts.get(key) ?? { undisturbed: [], leftOut: [] };
  parts.set(key, part);
  return part;
}

/** The outlines of one cross-section of one point. */
function partAlong(along: Map<string, Map<number, Part>>, { subject, side, behindMm }: Trace): Part {
  const key = `${subject.id}|${side}`;
  const sections = along.get(key) ?? new Map<number, Part>();
  along.set(key, sections);
  const behind = behindMm ?? 0;
  const part = sections.get(behind) ?? { undisturbed: [], leftOut: [] };
  sections.set(behind, part);
  return part;
}

/**
 * The outlines of a record by wheel, rail and point. An outline counts as undisturbed when it or its wheelset,
 * rail or turnout says so and neither says otherwise, as a reading does.
 */
export function indexTraces(record: CaseRecord, seed: number, keep: Keep): TraceIndex {
  const standing = record.traces.filter(({ removed }) => removed === null).sort(byTime);
  const parts = new Map<string, Part>();
  const along = new Map<string, Map<number, Part>>();
  for (const trace of standing) {
    const { kind, id } = trace.subject;
    const subject = record.entities[kind].find((each) => each.id === id && each.removed === null);
    if (subject === undefined) continue;
    const part = kind === 'turnout' ? partAlong(along, trace) : partOf(parts, trace);
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
    alongPoint: (turnout, side) =>
      [...(along.get(`${turnout}|${side}`) ?? [])]
        .map(([behindMm, { undisturbed, leftOut }]) => ({
          behindMm,
          trace: undisturbed.at(-1) ?? null,
          earlier: Math.max(0, undisturbed.length - 1),
          leftOut,
        }))
        .sort((a, b) => a.behindMm - b.behindMm),
    features: (trace) => {
      const known = features.get(trace) ?? keep(tracedFeatures(record, trace, seed));
      features.set(trace, known);
      return known;
    },
    any: (kind) => standing.some(({ subject }) => subject.kind === kind),
  };
}
