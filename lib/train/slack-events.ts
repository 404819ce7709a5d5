import type { RunSamples } from '../case/recorder-moments';
import type { Method } from '../findings/finding';
import { SLOPE_HALF_WINDOW_S, slopeOver, windowAround } from './acceleration';

export type SlackEvent = {
  readonly index: number;
  readonly timeS: number;
  /**
   * `speedBend`: the acceleration of the recording vehicle changes from one moment to the next.
   * `handling`: power is taken off and the dynamic brake put on, or the other way, within ten seconds.
   */
  readonly kind: 'speedBend' | 'handling';
  /** Change of acceleration, m/s², of a bend: positive when slack runs in from behind. */
  readonly change: number;
};

/** Change of acceleration that slack running in or out makes felt: 0.15 m/s², a third of a mile per hour each second. */
export const LEAST_BEND = 0.15;
/** Multiples of its own standard uncertainty a bend must have, so that the steps of the record make none. */
const CLEAR_OF_RESOLUTION = 3;
/** Bends closer together than this are one. */
const APART_S = 5;
const REVERSAL_S = 10;

/** +1 pulling, −1 dynamic brake on, 0 neither, NaN not recorded. */
function drive(samples: RunSamples, index: number): number {
  const throttle = samples.throttle?.[index] ?? NaN;
  const brake = samples.dynamicBrakeNotch?.[index] ?? samples.dynamicBrakeShare?.[index] ?? NaN;
  if (brake > 0) return -1;
  if (throttle > 0) return 1;
  return Number.isNaN(throttle) && Number.isNaN(brake) ? NaN : 0;
}

function bends(samples: RunSamples, speedU: number): readonly SlackEvent[] {
  const { time, speed } = samples;
  if (time === undefined || speed === undefined) return [];
  const found: SlackEvent[] = [];
  for (let index = 1; index < time.length - 1; index += 1) {
    const [from, to] = windowAround(time, index, SLOPE_HALF_WINDOW_S);
    const before = slopeOver(time, speed, from, index + 1, speedU);
    const after = slopeOver(time, speed, index, to, speedU);
    const change = after.value - before.value;
    const clear = CLEAR_OF_RESOLUTION * Math.hypot(before.u, after.u);
    if (!(Math.abs(change) >= LEAST_BEND && Math.abs(change) > clear)) continue;
    const event: SlackEvent = { index, timeS: time[index]!, kind: 'speedBend', change };
    const last = found.at(-1);
    if (last === undefined || event.timeS - last.timeS > APART_S) found.push(event);
    else if (Math.abs(change) > Math.abs(last.change)) found[found.length - 1] = event;
  }
  return found;
}

function reversals(samples: RunSamples): readonly SlackEvent[] {
  const { time } = samples;
  if (time === undefined) return [];
  const found: SlackEvent[] = [];
  let last: { readonly sign: number; readonly timeS: number } | null = null;
  for (let index = 0; index < time.length; index += 1) {
    const sign = drive(samples, index);
    if (sign !== 1 && sign !== -1) continue;
    const timeS = time[index]!;
    if (last !== null && last.sign !== sign && timeS - last.timeS <= REVERSAL_S)
      found.push({ index, timeS, kind: 'handling', change: NaN });
    last = { sign, timeS };
  }
  return found;
}

/**
 * Moments at which slack may have run in or out, by the rule of `slackMethod`, in the order of time.
 * `speedU`: standard uncertainty of one recorded speed, m/s.
 */
export const slackEvents = (samples: RunSamples, speedU: number): readonly SlackEvent[] =>
  [...bends(samples, speedU), ...reversals(samples)].sort((a, b) => a.index - b.index);

/** The rule as it is said beside what it found. */
export const slackRule =
  'By rule: the speed bends by 0.15 m/s² (0.34 mph/s) or more from the three seconds before to the three after, or power and dynamic brake change over within ten seconds.';

export const slackMethod: Method = {
  id: 'slack-events',
  name: 'Slack events by rule',
  formula:
    'A bend: |a(3 s after) − a(3 s before)| ≥ 0.15 m/s² (0.34 mph/s) and more than three times its own standard uncertainty, once in 5 s. A change of handling: from power to dynamic brake, or back, within 10 s.',
  validRange:
    'Seen at the recording vehicle only: slack that runs in and out far behind it may not be seen. A slipping wheel or a step of the recorder’s own clock can look the same.',
  sources: [{ text: 'Thresholds of the rule', status: 'engineering judgement' }],
};
