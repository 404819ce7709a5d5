import { standing } from '../case/current';
import type { CaseRecord, Entity, RecorderRun } from '../case/record';
import { firstEmergency, type RunSamples } from '../case/recorder-moments';
import { formatMeasure } from '../readings/format';
import { findInstrumentKind } from '../readings/instrument';
import { combine, standardUncertaintyFromHalfWidth } from '../readings/uncertainty';
import { accelerationAt, type Slope } from '../train/acceleration';
import { placePod, type PodPlacing } from '../train/pod-placing';
import { slackEvents, type SlackEvent } from '../train/slack-events';
import { indexReadings, type ReadingIndex } from './reading-index';

/** What a recorder run says of the POD: small, so that it goes wherever findings are computed. */
export type RecorderAtPod = {
  readonly runId: string;
  readonly index: number;
  /** On the run's own time, s. */
  readonly timeS: number;
  readonly by: PodPlacing['by'];
  /** Readings that placed the POD in the run. */
  readonly placedBy: readonly string[];
  readonly remark: string;
  readonly speedMs: number;
  readonly uMs: number;
  /** m/s², speeding up positive; NaN where the run does not tell. */
  readonly acceleration: Slope;
  /** Handling at that sample, or at the last one before the emergency application; NaN where not recorded. */
  readonly throttle: number;
  readonly dynamicBrakeShare: number;
  readonly tractiveEffortKn: number;
  /** Brake pipe at that sample, and how far it lies below the highest of the two minutes before, kPa. */
  readonly brakePipeKpa: number;
  readonly brakePipeReductionKpa: number;
  /** Brake cylinder of the recording locomotive at that sample, kPa; NaN where not recorded. */
  readonly brakeCylinderKpa: number;
  readonly emergency: boolean;
  /** In the minute before the POD. */
  readonly slack: readonly SlackEvent[];
};

/** What a recorder writes speed to, half a mile per hour, as a standard uncertainty in m/s. */
export const RECORDED_SPEED_U = standardUncertaintyFromHalfWidth(
  findInstrumentKind('recorder')?.halfWidth.speed ?? 0,
);

const SLACK_BEFORE_S = 60;
const PIPE_BEFORE_S = 120;
const NOTCHES = 8;

const positionOf = ({ fields }: Entity): number =>
  typeof fields.position === 'number' ? fields.position : NaN;

/**
 * From the leading end of the recording vehicle back to that of the first derailed one, m: the
 * lengths of what is between. Null when either is not known or a length is missing.
 */
function alongTrain(record: CaseRecord, read: ReadingIndex, run: RecorderRun) {
  const vehicles = standing(record, 'vehicle');
  const recording = vehicles.find(({ id }) => id === run.vehicleId);
  const first = vehicles
    .filter(({ fields }) => fields.firstDerailed === true)
    .sort((a, b) => positionOf(a) - positionOf(b))[0];
  if (recording === undefined || first === undefined) return null;
  const between = vehicles.filter(
    (each) => positionOf(each) >= positionOf(recording) && positionOf(each) < positionOf(first),
  );
  const lengths = between.map(({ id }) => read.take('vehicle', id, 'lengthOverPullingFaces'));
  const known = lengths.flatMap((length) => length ?? []);
  if (known.length < lengths.length || !(positionOf(first) >= positionOf(recording))) return null;
  return {
    m: known.reduce((sum, { value }) => sum + value, 0),
    uM: combine(...known.map(({ u }) => u)),
    readings: known.flatMap(({ readings }) => readings),
  };
}

const alongText = (metres: number): string =>
  `${formatMeasure(metres, { dimension: 'alongTrack', unit: 'ft', form: 'decimal' })} (${formatMeasure(metres, { dimension: 'alongTrack', unit: 'm', form: 'decimal' })})`;

/**
 * What the run says at the POD, placed as the case says: by a sample somebody chose, by the
 * distance back from the stop, else by the first emergency sample. `speedU` is the standard
 * uncertainty of one recorded speed, m/s. Null when nothing places the POD or no speed stands
 * there; a choice that does not fit the run is told in the remark and the emergency sample taken.
 */
export function recorderAtPod(
  record: CaseRecord,
  run: RecorderRun,
  samples: RunSamples,
  speedU: number,
): RecorderAtPod | null {
  const read = indexReadings(record);
  const sample = read.take('case', record.id, 'podSample');
  const back = read.take('case', record.id, 'podBackFromStop');
  const along = back === null ? null : alongTrain(record, read, run);
  const chosen = placePod(samples, {
    sample: sample?.value ?? null,
    backM: back?.value ?? null,
    alongTrainM: along?.m ?? null,
  });
  const placed = chosen.ok ? chosen : placePod(samples, { sample: null, backM: null, alongTrainM: null });
  if (!placed.ok || placed.value === null) return null;
  const { index, by } = placed.value;
  const { time, speed } = samples;
  const speedMs = speed?.[index] ?? NaN;
  if (time === undefined || speed === undefined || !Number.isFinite(speedMs)) return null;
  const acceleration = accelerationAt(time, speed, index, speedU);
  // Speed changes by a/v for every metre the POD may lie elsewhere.
  const perMetre = speedMs > 1 && Number.isFinite(acceleration.value) ? acceleration.value / speedMs : 0;
  const placeU = by === 'backFromStop' ? combine(back?.u ?? 0, along?.uM ?? 0) : 0;
  const timeS = time[index] ?? NaN;
  // Once the brake pipe has parted the controls no longer say what moved the train.
  const handled = lastBeforeEmergency(samples, index);
  const channel = (id: string): number => samples[id]?.[handled] ?? NaN;
  const notch = channel('dynamicBrakeNotch');
  const share = channel('dynamicBrakeShare');
  const placedBy =
    by === 'sample'
      ? (sample?.readings ?? [])
      : by === 'backFromStop'
        ? [...(back?.readings ?? []), ...(along?.readings ?? [])]
        : [];
  return {
    runId: run.id,
    index,
    timeS,
    by,
    placedBy,
    remark: [
      chosen.ok ? '' : `The POD could not be placed as entered: ${chosen.message}`,
      remarkOf(run, by, index, back?.value ?? NaN, along?.m ?? null),
    ]
      .filter(Boolean)
      .join(' '),
    speedMs,
    uMs: combine(speedU, perMetre * placeU),
    acceleration,
    throttle: channel('throttle'),
    dynamicBrakeShare: Number.isFinite(share) ? share : notch / NOTCHES,
    tractiveEffortKn: channel('tractiveEffort'),
    ...pipeAt(samples, handled),
    brakeCylinderKpa: channel('brakeCylinder'),
    emergency: (samples.emergency?.[index] ?? 0) >= 0.5,
    slack: slackEvents(samples, speedU).filter(
      (event) => event.timeS <= timeS && event.timeS >= timeS - SLACK_BEFORE_S,
    ),
  };
}

function remarkOf(
  run: RecorderRun,
  by: PodPlacing['by'],
  index: number,
  backM: number,
  alongM: number | null,
): string {
  const at = `sample ${index + 1} of the recorder run “${run.name}”`;
  switch (by) {
    case 'sample':
      return `At ${at}, chosen by hand as the one at which the POD was reached.`;
    case 'backFromStop':
      return alongM === null
        ? `At ${at}, ${alongText(backM)} back from the stop: when the recording vehicle itself passed the POD. The lengths of the vehicles from it to the first derailed one are not all known.`
        : `At ${at}: the recording vehicle stopped ${alongText(backM)} past the POD, and the first derailed vehicle was ${alongText(alongM)} behind it.`;
    case 'emergency':
      return `At the first emergency ${at}. The first wheel may have left the rail some distance before that.`;
  }
}

function lastBeforeEmergency(samples: RunSamples, index: number): number {
  const first = firstEmergency(samples);
  return first === null || index < first ? index : Math.max(0, first - 1);
}

function pipeAt(samples: RunSamples, index: number) {
  const pipe = samples.brakePipe;
  const time = samples.time;
  const here = pipe?.[index] ?? NaN;
  let highest = here;
  for (
    let i = index;
    i >= 0 && pipe !== undefined && time !== undefined && time[index]! - time[i]! <= PIPE_BEFORE_S;
    i -= 1
  ) {
    if (pipe[i]! > highest) highest = pipe[i]!;
  }
  return { brakePipeKpa: here, brakePipeReductionKpa: highest - here };
}
