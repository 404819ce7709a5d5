import { group } from 'd3-array';
import { currentReadings } from '../case/current';
import type { CaseRecord, Entity, Reading, SubjectRef } from '../case/record';
import type { Argument } from '../explanations/argument';
import { asReadMethod } from '../findings/as-read';
import { buildContext, FINDING_SEED, recorderPart, type Context } from '../findings/context';
import { RECORDED_SPEED_U, recorderAtPod, type RecorderAtPod } from '../findings/recorder-at-pod';
import type { Finding } from '../findings/finding';
import type { UnitSystem } from '../readings/unit';
import type { ReportInput } from './input';
import { methodsUsed } from './pieces/methods';
import { shapeMethods } from './pieces/shape-methods';
import { makeReferences, type References } from './references';
import { systemOf } from './words';
import type { Writer } from './writer';

/** What every section is built from. */
export type Report = {
  readonly input: ReportInput;
  readonly record: CaseRecord;
  readonly system: UnitSystem;
  readonly refs: References;
  /** Findings that are printed, in the order of their numbers F1 …; those of single stations are charted. */
  readonly findings: readonly Finding[];
  readonly argument: Argument;
  /** The record, indexed as findings look things up. */
  readonly context: Context;
  readonly instrument: (id: string | null) => Entity | undefined;
  /** Current readings about one record of the case, oldest first. */
  readonly readingsOf: (subject: SubjectRef) => readonly Reading[];
};

/** One section of the report: one file each, all in the list of sections/index. */
export type Section = {
  readonly id: string;
  readonly title: string;
  /** Numbered 1 …, lettered A …, neither; the cover has no heading at all. */
  readonly kind: 'numbered' | 'appendix' | 'plain' | 'cover';
  readonly startsPage?: boolean;
  readonly orientation?: 'portrait' | 'landscape';
  readonly build: (report: Report, writer: Writer) => void | Promise<void>;
};

/** Parts in the order in which the report comes to them. */
const PARTS: readonly Finding['part'][] = ['track', 'wheels', 'rails', 'turnout', 'train', 'mechanics'];

/**
 * What is printed as a finding. A single station's are points of the chart; those of vehicles that
 * stayed on the track are in the table of the train; a reading held against nothing is printed as
 * the reading it is.
 */
function printed({ record, assessment }: ReportInput): readonly Finding[] {
  const derailed = new Set(
    record.entities.vehicle.filter(({ fields }) => fields.derailed === true).map(({ id }) => id),
  );
  return assessment.findings
    .filter((finding) => {
      const { subject } = finding;
      if (subject?.kind === 'station') return false;
      if (subject?.kind === 'vehicle') return derailed.has(subject.id);
      const onlyRead = finding.kind === 'measured' && finding.limits.length === 0;
      return !(
        onlyRead &&
        finding.method.id === asReadMethod.id &&
        subject !== null &&
        subject.kind !== 'case'
      );
    })
    .map((finding, i) => ({ finding, i }))
    .sort((a, b) => PARTS.indexOf(a.finding.part) - PARTS.indexOf(b.finding.part) || a.i - b.i)
    .map(({ finding }) => finding);
}

/** What the run in the report says of the POD, as the findings had it. */
function atPodOf({ record, recorder }: ReportInput): RecorderAtPod | null {
  const run = record.recorderRuns.find(({ id, removed }) => id === recorder?.runId && removed === null);
  return run === undefined || recorder === null
    ? null
    : recorderAtPod(record, run, recorder.channels, RECORDED_SPEED_U);
}

export function prepareReport(input: ReportInput): Report {
  const { record, assessment } = input;
  const argument = assessment.argument;
  const findings = printed(input);
  const instruments = new Map(record.entities.instrument.map((each) => [each.id, each]));
  const bySubject = group(currentReadings(record), ({ subject }) => `${subject.kind} ${subject.id}`);
  return {
    input,
    record,
    system: systemOf(record),
    refs: makeReferences(
      record,
      findings,
      assessment.findings,
      methodsUsed(findings, argument, shapeMethods(record)),
    ),
    findings,
    argument,
    context: buildContext(record, {
      seed: FINDING_SEED,
      recorder: recorderPart(atPodOf(input)),
      keep: input.keep,
    }),
    instrument: (id) => (id === null ? undefined : instruments.get(id)),
    readingsOf: ({ kind, id }) => bySubject.get(`${kind} ${id}`) ?? [],
  };
}
