import { formatMeasure } from '../readings/format';
import { ok, refuse, type Result } from '../readings/result';

/** Samples of a run by channel id, in canonical units; NaN where the recorder wrote nothing. */
export type RunSamples = Readonly<Record<string, Float64Array>>;

/** Index of the first sample with the emergency application on; null when none is. */
export function firstEmergency(samples: RunSamples): number | null {
  const index = samples.emergency?.findIndex((value) => value >= 0.5) ?? -1;
  return index < 0 ? null : index;
}

const alongText = (metres: number, unit: 'ft' | 'm'): string =>
  formatMeasure(metres, { dimension: 'alongTrack', unit, form: 'decimal' });

/** Below this a recorder writes nothing or zero: the train stands. */
const STANDING_MS = 0.2;

/** Index of the first sample of the last standstill; null when the train still moves at the end. */
export function finalStop(samples: RunSamples): number | null {
  const speed = samples.speed;
  if (speed === undefined || speed.length === 0) return null;
  let at = speed.length;
  while (at > 0) {
    const value = speed[at - 1] ?? NaN;
    if (!Number.isNaN(value) && value > STANDING_MS) break;
    at -= 1;
  }
  return at === speed.length ? null : at;
}

/**
 * Distance run from each sample to the end, in m: from the distance channel when there is one,
 * else the speed summed by the trapezoidal rule over time. Gaps in the speed run on straight
 * between the samples beside them.
 */
export function distanceToGo(samples: RunSamples, end: number): Float64Array | null {
  const { distance, speed, time } = samples;
  const toGo = new Float64Array(end + 1);
  if (distance !== undefined && Number.isFinite(distance[end])) {
    const last = distance[end] ?? NaN;
    for (let i = 0; i <= end; i += 1) toGo[i] = Math.abs(last - (distance[i] ?? NaN));
    return toGo;
  }
  if (speed === undefined || time === undefined) return null;
  let later = end;
  for (let i = end - 1; i >= 0; i -= 1) {
    const here = speed[i] ?? NaN;
    if (!Number.isFinite(here) || !Number.isFinite(time[i])) {
      toGo[i] = NaN;
      continue;
    }
    const laterSpeed = speed[later] ?? NaN;
    const step = (time[later] ?? NaN) - (time[i] ?? NaN);
    const mean = Number.isFinite(laterSpeed) ? (here + laterSpeed) / 2 : here / 2;
    toGo[i] = (toGo[later] ?? 0) + Math.max(step, 0) * mean;
    later = i;
  }
  return toGo;
}

/**
 * Index of the sample at which the recording vehicle was `distanceM` before where it came to rest
 * (m, above zero): the sample nearest to it.
 *
 * Refuses when the train does not come to rest, when neither distance nor time and speed were
 * recorded, and when the run does not reach back that far.
 */
export function sampleBackFromStop(samples: RunSamples, distanceM: number): Result<number> {
  const stop = finalStop(samples);
  if (stop === null)
    return refuse('The train does not come to rest in this run. Import one that goes on to the stop.');
  const toGo = distanceToGo(samples, stop);
  if (toGo === null)
    return refuse('The run has neither distance nor speed against time. Import one of these columns.');
  const longest = toGo.reduce((most, value) => (value > most ? value : most), 0);
  if (!(distanceM > 0) || distanceM > longest)
    return refuse(
      `The run covers ${alongText(longest, 'ft')} (${alongText(longest, 'm')}) before the stop. Enter a distance above zero and within it.`,
    );
  let nearest = stop;
  let nearestBy = Infinity;
  toGo.forEach((value, index) => {
    const by = Math.abs(value - distanceM);
    if (by < nearestBy) [nearest, nearestBy] = [index, by];
  });
  return ok(nearest);
}
