import type { LoadedCase } from '~/app/case.server';
import { localTime } from '~/app/times';
import type { SubjectRef } from '~/lib/case/record';
import { sameSubject } from '~/lib/case/current';
import type { Trace } from '~/lib/case/trace';
import { behindText, makingText } from '~/lib/case/trace-words';
import { aboutChoices, aboutKey } from './about';
import { traceFeaturesSoon } from './features.server';

/** What is worth seeing in a list; the page of the outline has all. */
const KEY_FEATURES: ReadonlySet<string> = new Set([
  'flangeHeight',
  'flangeThicknessNa',
  'flangeAngle',
  'treadHollow',
  'verticalLoss',
  'gaugeFaceLoss',
  'gaugeFaceAngle',
  'pointThickness',
  'pointSideSlope',
]);

export type TraceRow = {
  readonly id: string;
  readonly href: string;
  readonly name: string;
  readonly made: string;
  readonly takenAt: string;
  /** Null while they are being computed. */
  readonly numbers: readonly { readonly name: string; readonly text: string }[] | null;
  readonly problem: string | null;
  readonly removed: string | null;
};

/** Outlines of one wheelset, rail or turnout, with what can be added to it. */
export type TraceList = {
  readonly rows: readonly TraceRow[];
  readonly add: readonly { readonly href: string; readonly label: string }[];
  /** What an outline is good for, where there is none yet. */
  readonly use: string;
};

function partName(trace: Trace): string {
  const side = trace.side === 'left' ? 'Left' : 'Right';
  switch (trace.shape) {
    case 'wheel':
      return `${side} wheel`;
    case 'rail':
      return 'Rail head';
    case 'point':
      return `${side} point ${behindText(trace)}`;
  }
}

async function rowOf(loaded: LoadedCase, trace: Trace): Promise<TraceRow> {
  const features = trace.removed === null ? await traceFeaturesSoon(loaded, trace) : null;
  const numbers = features?.ok
    ? features.rows.flatMap(({ id, name, text }) =>
        text !== null && KEY_FEATURES.has(id) ? [{ name, text }] : [],
      )
    : null;
  return {
    id: trace.id,
    href: `/cases/${loaded.caseId}/traces/${trace.id}`,
    name: partName(trace),
    made: makingText(trace.making),
    takenAt: trace.takenAt === null ? 'not said' : localTime(trace.takenAt),
    numbers: features?.ok === false ? [] : numbers,
    problem: features?.ok === false ? features.problem : null,
    removed: trace.removed?.reason ?? null,
  };
}

/** The outlines of one thing, left before right, and where another is added. */
export async function traceList(loaded: LoadedCase, subject: SubjectRef): Promise<TraceList> {
  const { record, caseId } = loaded;
  const traces = record.traces
    .filter((trace) => sameSubject(trace.subject, subject))
    .sort((a, b) =>
      a.side === b.side
        ? (a.behindMm ?? 0) - (b.behindMm ?? 0) || a.order - b.order
        : a.side === 'left'
          ? -1
          : 1,
    );
  const add = aboutChoices(record)
    .filter(({ about }) => sameSubject(about.subject, subject))
    .map(({ about }) => ({
      href: `/cases/${caseId}/traces/new?about=${encodeURIComponent(aboutKey(about))}`,
      label: about.shape === 'rail' ? 'Add an outline' : `Add an outline, ${about.side} ${about.shape}`,
    }));
  const use =
    subject.kind === 'turnout'
      ? 'From an outline of the point’s cross-section come its thickness and its gauge side at every height; without one the side is taken as straight.'
      : 'From an outline come height, thickness, angle and wear, with the whole shape.';
  return { rows: await Promise.all(traces.map((trace) => rowOf(loaded, trace))), add, use };
}
