import type { CaseRecord } from '../case/record';
import { nameOfTrace } from '../case/trace-words';
import { findingsOf } from '../findings';
import { buildContext, type FindingOptions } from '../findings/context';
import type { Finding } from '../findings/finding';
import { keyInputsOf } from '../findings/key-inputs';
import { findQuantity } from '../readings/quantities';
import { argue } from './argue';
import type { Argument } from './argument';
import { gather } from './gather';
import { adjustJudgements, judgementTable, judgementValues, TABLES, type Tables } from './judgement-table';
import type { AppliedChange, JudgementValues, RefusedChange } from './judgements';
import { withoutReading, withoutTrace } from './leave-out';
import { marginSampler, type MarginSampler } from './margin-sampler';
import { statesOf, type WithoutReading } from './what-would-change';
import type { Ref, WitnessRecord } from './witness';

export type Assessment = {
  readonly findings: readonly Finding[];
  /** With the investigator's changes to the judgements, if there are any. */
  readonly argument: Argument;
  /** With the judgements as delivered; the same object when nothing was changed. */
  readonly baseline: Argument;
  readonly adjustedBy: readonly AppliedChange[];
  readonly refusedChanges: readonly RefusedChange[];
};

export type AssessInput = {
  readonly record: CaseRecord;
  /** Seed of every draw: the same record and seed give the same assessment. */
  readonly seed: number;
  readonly recorder?: FindingOptions['recorder'];
  readonly keep?: FindingOptions['keep'];
  readonly tables?: Tables;
};

/**
 * From readings to argument: findings with their uncertainty, the witnesses they and the
 * observations make, and what these say for and against each explanation. Never a cause.
 */
export function assess({ record, seed, recorder = null, keep, tables = TABLES }: AssessInput): Assessment {
  const options: FindingOptions = { seed, recorder, keep };
  const sample = marginSampler(seed);
  const context = buildContext(record, options);
  const findings = findingsOf(context);
  const records = gather(tables.facts, { context, keyInputs: keyInputsOf(context), sample });
  const withoutReadings = leaveEachOut(record, options, tables, records, sample);

  const table = judgementTable(tables);
  const adjusted = adjustJudgements(table, record.judgementChanges);
  const argueWith = (values: JudgementValues): Argument =>
    argue({ record, tables, values, records, withoutReadings, findings, seed });
  const argument = argueWith(adjusted.values);
  return {
    findings,
    argument,
    baseline: adjusted.applied.length === 0 ? argument : argueWith(judgementValues(table)),
    adjustedBy: adjusted.applied,
    refusedChanges: adjusted.refused,
  };
}

const LEFT_OUT_IN_TURN: ReadonlySet<Ref['kind']> = new Set(['reading', 'recorderRun', 'trace']);

/** Every reading and outline that any witness rests on, each left out in turn and everything taken anew. */
function leaveEachOut(
  record: CaseRecord,
  options: FindingOptions,
  tables: Tables,
  records: ReadonlyMap<string, WitnessRecord>,
  sample: MarginSampler,
): readonly WithoutReading[] {
  const refs = new Map<string, Ref>(
    [...records.values()]
      .flatMap((each) => each.refs)
      .flatMap((ref) => (LEFT_OUT_IN_TURN.has(ref.kind) ? [[ref.id, ref] as const] : [])),
  );
  return [...refs.values()].map((ref) => {
    const speed = options.recorder?.speedAtPod;
    const isRun = speed?.runId === ref.id;
    // Without the reading that placed the POD in the run, the run says nothing of the POD.
    const losesRun = isRun || speed?.placedBy?.includes(ref.id) === true;
    const context = buildContext(
      without(record, isRun ? { kind: 'recorderRun', id: ref.id } : ref),
      losesRun ? { ...options, recorder: null } : options,
    );
    const again = gather(tables.facts, { context, keyInputs: keyInputsOf(context), sample });
    return {
      ref: isRun ? { kind: 'recorderRun', id: ref.id } : ref,
      what: isRun ? 'Speed from the recorder' : leftOutText(record, ref),
      states: statesOf(again),
    };
  });
}

function without(record: CaseRecord, { kind, id }: Ref): CaseRecord {
  if (kind === 'recorderRun') return record;
  return kind === 'trace' ? withoutTrace(record, id) : withoutReading(record, id);
}

function leftOutText(record: CaseRecord, { kind, id }: Ref): string {
  const trace = kind === 'trace' ? record.traces.find((each) => each.id === id) : undefined;
  return trace === undefined ? readingText(record, id) : nameOfTrace(record, trace);
}

function readingText(record: CaseRecord, id: string): string {
  const reading = record.readings.find((each) => each.id === id);
  if (reading === undefined) return id;
  const name = findQuantity(reading.quantity)?.name ?? reading.quantity;
  const unit =
    reading.value === null || reading.unit === '' || reading.unit === '1' ? '' : ` ${reading.unit}`;
  return `${name}: ${reading.entered}${unit}`;
}
