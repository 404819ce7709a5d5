import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { recorderMoment } from '~/app/findings/recorder-speed.server';
import { runFigure } from '~/app/figures/case-figures.server';
import { figureRef, type FigureRef } from '~/app/figures/view.server';
import { systemOf } from '~/app/readings/take.server';
import { readRecorderRun } from '~/db/recorder';
import { nameOf } from '~/lib/case/name-of';
import type { RecorderRun } from '~/lib/case/record';
import { recorderChannel } from '~/lib/case/recorder';
import { firstEmergency, sampleBackFromStop, type RunSamples } from '~/lib/case/recorder-moments';
import { formatMeasure } from '~/lib/readings/format';
import { parseMeasure } from '~/lib/readings/parse';
import { quantityOf } from '~/lib/readings/quantities';
import { refuse, type Result } from '~/lib/readings/result';
import type { UnitSystem } from '~/lib/readings/unit';
import { clockFaults, type ClockFaults } from '~/lib/train/clock-faults';

/** One sample in words: which it is, when, and how fast. */
export type Sample = { readonly number: number; readonly time: string; readonly speed: string };

export type RunView = {
  readonly id: string;
  readonly name: string;
  readonly facts: readonly { readonly label: string; readonly text: string }[];
  readonly sha256: string;
  readonly note: string;
  readonly emergency: Sample | null;
  /** Where the POD is in this run, and how it was placed; null when it is in another or in none. */
  readonly pod: { readonly sample: Sample; readonly how: string } | null;
  /** Gaps and backward steps of its clock, in words. */
  readonly clock: readonly string[];
  readonly chart: FigureRef | null;
  readonly byDistance: FigureRef | null;
  readonly removed: string | null;
};

const speedText = (speedMs: number, system: UnitSystem): string =>
  Number.isFinite(speedMs)
    ? formatMeasure(speedMs, { dimension: 'speed', system, form: 'decimal' })
    : 'not recorded';

function sampleAt(samples: RunSamples, index: number, system: UnitSystem): Sample {
  const time = samples.time?.[index] ?? NaN;
  return {
    number: index + 1,
    time: Number.isFinite(time)
      ? `${formatMeasure(time, { dimension: 'time', unit: 's' })} after the first sample`
      : 'at a time not recorded',
    speed: speedText(samples.speed?.[index] ?? NaN, system),
  };
}

const MOST_NAMED = 5;
const seconds = (s: number): string => formatMeasure(s, { dimension: 'time', unit: 's' });

function clockWords({ usualStepS, gaps, backward }: ClockFaults): readonly string[] {
  const named = gaps.slice(0, MOST_NAMED).map(([from, to]) => `${seconds(to - from)} from ${seconds(from)}`);
  return [
    ...(gaps.length === 0
      ? []
      : [
          `${gaps.length === 1 ? 'One gap' : `${gaps.length} gaps`} of more than three times the usual ${seconds(usualStepS)} between samples: ${named.join(', ')}${gaps.length > MOST_NAMED ? ' and more' : ''}.`,
        ]),
    ...(backward.length === 0
      ? []
      : [
          `The clock steps back at sample ${backward
            .slice(0, MOST_NAMED)
            .map((index) => index + 1)
            .join(', ')}${backward.length > MOST_NAMED ? ' and more' : ''}; the times are kept as they are.`,
        ]),
  ];
}

function viewOf(loaded: LoadedCase, run: RecorderRun): RunView {
  const { record, db } = loaded;
  const system = systemOf(record.fields);
  const samples = run.removed === null ? readRecorderRun(db, run.id) : {};
  const time = samples.time;
  const at = firstEmergency(samples);
  const pod = recorderMoment(loaded);
  const duration = time ? (time.at(-1) ?? 0) - (time[0] ?? 0) : NaN;
  return {
    id: run.id,
    name: run.name,
    facts: [
      {
        label: 'Recorded on',
        text: run.vehicleId ? nameOf(record, { kind: 'vehicle', id: run.vehicleId }) : 'not said',
      },
      { label: 'File', text: run.fileName },
      { label: 'Samples', text: String(run.rows) },
      {
        label: 'Over',
        text: Number.isFinite(duration)
          ? formatMeasure(duration, { dimension: 'time', unit: 's' })
          : 'not recorded',
      },
      {
        label: 'Added to its clock',
        text: formatMeasure(run.clockOffsetS, { dimension: 'time', unit: 's' }),
      },
      {
        label: 'Channels',
        text: Object.keys(run.channels)
          .map((id) => recorderChannel(id)?.label ?? id)
          .join(', '),
      },
    ],
    sha256: run.sha256,
    note: run.note,
    emergency: at === null ? null : sampleAt(samples, at, system),
    pod: pod?.runId === run.id ? { sample: sampleAt(samples, pod.index, system), how: pod.remark } : null,
    clock: time ? clockWords(clockFaults(time)) : [],
    chart: figureRef(loaded, runFigure(run.id)),
    byDistance: figureRef(loaded, runFigure(run.id, 'distance')),
    removed: run.removed?.reason ?? null,
  };
}

/** The recorder runs of the case, removed ones last. */
export const runViews = (loaded: LoadedCase): readonly RunView[] =>
  derived(loaded, 'recorder runs', () =>
    [...loaded.record.recorderRuns]
      .sort((a, b) => Number(a.removed !== null) - Number(b.removed !== null))
      .map((run) => viewOf(loaded, run)),
  );

/** The sample at which the recording vehicle was the entered distance before where it stopped. */
export function sampleBack(loaded: LoadedCase, runId: string, distance: string): Result<Sample> {
  const run = loaded.record.recorderRuns.find(({ id, removed }) => id === runId && removed === null);
  if (!run) return refuse('This recorder run is no longer in the case.');
  const quantity = quantityOf('stationPosition');
  if (quantity.kind !== 'measure') throw new Error('A distance is a measure.');
  const system = systemOf(loaded.record.fields);
  const entered = parseMeasure(distance, quantity, system);
  if (!entered.ok) return entered;
  const samples = readRecorderRun(loaded.db, run.id);
  const at = sampleBackFromStop(samples, entered.value.value);
  return at.ok ? { ok: true, value: sampleAt(samples, at.value, system) } : at;
}
