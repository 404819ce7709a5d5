import { standing } from '../case/current';
import { facingTravel } from '../case/facing';
import type { CaseRecord, Entity } from '../case/record';
import { keepInMemory, type Keep } from './long-sum';
import { indexTraces, type TraceIndex } from './traced/trace-index';
import { withTraces } from './traced/with-traces';
import { firstDerailed, type FirstDerailed } from './first-derailed';
import { podSides, type PodSides } from './pod-sides';
import type { RecorderAtPod } from './recorder-at-pod';
import { indexReadings, type ReadingIndex, type Taken } from './reading-index';
import { rulesInForce, type RulesInForce } from './rules-in-force';

/** Speed at the POD from a recorder run: the run stands where the readings of a finding stand. */
export type RecorderSpeed = {
  readonly runId: string;
  readonly speedMs: number;
  readonly uMs: number;
  readonly remark: string;
  /** Readings that placed the POD in the run; the speed falls with them. */
  readonly placedBy?: readonly string[];
};

export type FindingOptions = {
  /** Seed of the draws; the same seed gives the same findings. */
  readonly seed: number;
  readonly recorder?: {
    readonly speedAtPod: RecorderSpeed | null;
    /** Everything else the same run says there. */
    readonly atPod?: RecorderAtPod | null;
  } | null;
  /** Where sums about outlines are kept from one time to the next; in the memory of the process when not given. */
  readonly keep?: Keep;
};

/** Seed of screens and report alike, so that they cannot disagree. */
export const FINDING_SEED = 1;

/** What a run says of the POD, as findings take it. */
export function recorderPart(atPod: RecorderAtPod | null): FindingOptions['recorder'] {
  if (atPod === null) return { speedAtPod: null };
  const { runId, speedMs, uMs, remark, placedBy } = atPod;
  return { speedAtPod: { runId, speedMs, uMs, remark, placedBy }, atPod };
}

/** A station whose distance from the POD is known; negative before it, in the direction of travel. */
export type Station = { readonly id: string; readonly name: string; readonly positionM: number };

/** What every finding looks things up in, built once per record. */
export type Context = {
  /** As it reads facing the direction of travel. */
  readonly record: CaseRecord;
  readonly seed: number;
  /** Readings, and outlines where they say the same thing better. */
  readonly read: ReadingIndex;
  readonly traces: TraceIndex;
  readonly keep: Keep;
  /** In order of position. */
  readonly stations: readonly Station[];
  /** Stations without a distance from the POD: they cannot feed anything that depends on one. */
  readonly unplaced: readonly Entity[];
  readonly alignment: 'tangent' | 'curve' | null;
  readonly sides: PodSides;
  readonly rules: RulesInForce;
  readonly first: FirstDerailed;
  readonly vehicles: ReadonlyMap<string, Entity>;
  readonly wheelsets: ReadonlyMap<string, Entity>;
  /** From the recorder, else as reported; null when neither. */
  readonly speedAtPod: Taken | null;
  /** What the recorder says of the POD; null without one. */
  readonly recorder: RecorderAtPod | null;
};

export function buildContext(asEntered: CaseRecord, options: FindingOptions): Context {
  const record = facingTravel(asEntered);
  const keep = options.keep ?? keepInMemory;
  const traces = indexTraces(record, options.seed, keep);
  const read = withTraces(indexReadings(record), traces);
  const stations: Station[] = [];
  const unplaced: Entity[] = [];
  for (const entity of standing(record, 'station')) {
    const positionM = read.position(entity.id);
    if (positionM === null) unplaced.push(entity);
    else stations.push({ id: entity.id, name: String(entity.fields.name ?? '?'), positionM });
  }
  // Two at one place stand in an order of their own, so that none hangs on which was entered first.
  stations.sort((a, b) => a.positionM - b.positionM || (a.id < b.id ? -1 : 1));
  const alignment = alignmentOf(record);
  const authorised = read.take('case', record.id, 'authorisedSpeed');
  const qualified = read.take('case', record.id, 'qualifiedUnbalance');
  return {
    record,
    seed: options.seed,
    read,
    traces,
    keep,
    stations,
    unplaced,
    alignment,
    sides: podSides(record),
    rules: rulesInForce(record, alignment, authorised?.value ?? null, qualified?.value ?? null),
    first: firstDerailed(record, read),
    vehicles: byId(standing(record, 'vehicle')),
    wheelsets: byId(standing(record, 'wheelset')),
    speedAtPod: speedOf(record, read, options),
    recorder: options.recorder?.atPod ?? null,
  };
}

const byId = (entities: readonly Entity[]): ReadonlyMap<string, Entity> =>
  new Map(entities.map((entity) => [entity.id, entity]));

function alignmentOf(record: CaseRecord): Context['alignment'] {
  const { alignment } = record.fields;
  if (alignment === 'tangent') return 'tangent';
  return alignment === 'curveLeft' || alignment === 'curveRight' ? 'curve' : null;
}

function speedOf(record: CaseRecord, read: ReadingIndex, options: FindingOptions): Taken | null {
  const recorded = options.recorder?.speedAtPod;
  if (recorded) {
    return {
      value: recorded.speedMs,
      u: recorded.uMs,
      readings: [recorded.runId, ...(recorded.placedBy ?? [])],
      remarks: [recorded.remark],
    };
  }
  const reported = read.take('case', record.id, 'speedAtPod');
  return (
    reported && { ...reported, remarks: [...reported.remarks, 'Speed as reported, not from a recorder.'] }
  );
}
