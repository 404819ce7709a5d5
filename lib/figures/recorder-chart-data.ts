import { distanceToGo, type RunSamples } from '../case/recorder-moments';
import type { RecorderAtPod } from '../findings/recorder-at-pod';
import type { UnitSystem } from '../readings/unit';
import { accelerations } from '../train/acceleration';
import { clockFaults } from '../train/clock-faults';
import { slackEvents } from '../train/slack-events';
import type { RecorderChartData } from './recorder-chart';

type About = {
  readonly system: UnitSystem;
  readonly name: string;
  /** What this run says of the POD; null when the POD is placed in another run or in none. */
  readonly atPod: RecorderAtPod | null;
  readonly authorisedSpeedMs: number | null;
  /** Standard uncertainty of one recorded speed, m/s. */
  readonly speedU: number;
};

/** A run with everything its chart shows: acceleration, distance, slack events and faults of the clock. */
export function recorderChartData(samples: RunSamples, about: About): RecorderChartData {
  const { system, name, atPod, authorisedSpeedMs, speedU } = about;
  const shared = { system, name, samples, authorisedSpeedMs };
  const { time, speed } = samples;
  if (time === undefined || speed === undefined) return { ...shared, podTimeS: atPod?.timeS ?? null };
  const toGo = distanceToGo(samples, time.length - 1);
  const from = toGo?.[atPod?.index ?? 0] ?? NaN;
  return {
    ...shared,
    podTimeS: atPod?.timeS ?? null,
    ...(atPod === null ? {} : { podPlacedBy: atPod.remark, podIndex: atPod.index }),
    acceleration: accelerations(time, speed, speedU),
    ...(toGo === null ? {} : { alongM: toGo.map((each) => from - each) }),
    slack: slackEvents(samples, speedU),
    faults: clockFaults(time),
  };
}
