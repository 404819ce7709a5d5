import type { LoadedCase } from '~/app/case.server';
import { quantityText, readingText } from '~/app/readings/wording';
import { nameOf } from '~/lib/case/name-of';
import { makingText, tracePart } from '~/lib/case/trace-words';
import type { Finding, Method } from '~/lib/findings/finding';

/**
 * A reading a finding came from, or an outline. The recorder run has no page of its own and leads
 * to Train.
 */
export type FindingSource = {
  readonly href: string;
  readonly of: string;
  readonly what: string;
  readonly text: string;
};

export type FindingTrail = { readonly method: Method; readonly sources: readonly FindingSource[] };

/** How a finding was come by: its method, and every reading behind it. */
export function findingTrail({ record, caseId }: LoadedCase, finding: Finding): FindingTrail {
  const ids = new Set('readings' in finding ? finding.readings : []);
  const readings = record.readings
    .filter(({ id }) => ids.has(id))
    .map((reading) => ({
      href: `/cases/${caseId}/readings/${reading.id}`,
      of: nameOf(record, reading.subject),
      what: quantityText(reading.quantity, reading.slot),
      text: readingText(reading),
    }));
  const runs = record.recorderRuns
    .filter(({ id }) => ids.has(id))
    .map(({ id, name, fileName }) => ({
      href: `/cases/${caseId}/train#run-${id}`,
      of: name,
      what: 'Recorder run',
      text: fileName,
    }));
  const traces = record.traces
    .filter(({ id }) => ids.has(id))
    .map((trace) => ({
      href: `/cases/${caseId}/traces/${trace.id}`,
      of: nameOf(record, trace.subject),
      what: tracePart(trace),
      text: makingText(trace.making),
    }));
  return { method: finding.method, sources: [...readings, ...traces, ...runs] };
}
