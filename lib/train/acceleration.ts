import type { Method } from '../findings/finding';

/** Half the stretch of time over which a slope is taken, s. */
export const SLOPE_HALF_WINDOW_S = 3;
const FEWEST = 4;

/** A slope with its standard uncertainty; NaN where there are too few samples. */
export type Slope = { readonly value: number; readonly u: number };

const NONE: Slope = { value: NaN, u: NaN };

/**
 * Slope of `values` against `time` (s) by least squares over the samples from index `from` up to,
 * not including, `to`. The standard uncertainty comes from the scatter about the line or from
 * `resolutionU`, the standard uncertainty of one value, whichever is larger. NaN with fewer than
 * four samples, at a gap of values, or where the clock steps back.
 * Source: least squares, JCGM 100:2008 (GUM), H.3.
 */
export function slopeOver(
  time: ArrayLike<number>,
  values: ArrayLike<number>,
  from: number,
  to: number,
  resolutionU: number,
): Slope {
  const count = to - from;
  if (count < FEWEST) return NONE;
  let meanT = 0;
  let meanV = 0;
  for (let i = from; i < to; i += 1) {
    if (!Number.isFinite(values[i]) || (i > from && time[i]! < time[i - 1]!)) return NONE;
    meanT += time[i]! / count;
    meanV += values[i]! / count;
  }
  let squares = 0;
  let product = 0;
  for (let i = from; i < to; i += 1) {
    squares += (time[i]! - meanT) ** 2;
    product += (time[i]! - meanT) * (values[i]! - meanV);
  }
  if (!(squares > 0)) return NONE;
  const value = product / squares;
  let scatter = 0;
  for (let i = from; i < to; i += 1) {
    scatter += (values[i]! - meanV - value * (time[i]! - meanT)) ** 2;
  }
  const perValue = Math.max(resolutionU, Math.sqrt(scatter / (count - 2)));
  return { value, u: perValue / Math.sqrt(squares) };
}

/** Samples from `index` on, backwards and forwards, whose time lies within `halfWindowS` of it. */
export function windowAround(
  time: ArrayLike<number>,
  index: number,
  halfWindowS: number,
): readonly [from: number, to: number] {
  const at = time[index]!;
  let from = index;
  while (from > 0 && time[from - 1]! <= time[from]! && at - time[from - 1]! <= halfWindowS) from -= 1;
  let to = index + 1;
  while (to < time.length && time[to]! >= time[to - 1]! && time[to]! - at <= halfWindowS) to += 1;
  return [from, to];
}

/**
 * Acceleration (m/s²) at a sample: slope of the speed (m/s) over the six seconds around it.
 * Speeding up is positive.
 */
export function accelerationAt(
  time: ArrayLike<number>,
  speed: ArrayLike<number>,
  index: number,
  speedU: number,
): Slope {
  const [from, to] = windowAround(time, index, SLOPE_HALF_WINDOW_S);
  return slopeOver(time, speed, from, to, speedU);
}

/** As `accelerationAt` for every sample; NaN where there are too few around it. */
export function accelerations(
  time: ArrayLike<number>,
  speed: ArrayLike<number>,
  speedU: number,
): Float64Array {
  return Float64Array.from({ length: time.length }, (_, i) => accelerationAt(time, speed, i, speedU).value);
}

export const accelerationMethod: Method = {
  id: 'acceleration-from-speed',
  name: 'Acceleration from recorded speed',
  formula:
    'a = Σ(t − t̄)(v − v̄)/Σ(t − t̄)² over the samples within 3 s; u(a) = u(v)/√Σ(t − t̄)²; u(v): scatter about the line or resolution of the recorder, whichever is larger.',
  validRange:
    'Four samples or more within six seconds, no gap and no backward step of the clock among them. A change quicker than the window is flattened. A wheel that slips or slides shows an acceleration the train did not have.',
  sources: [
    { text: 'JCGM 100:2008 (GUM), H.3, straight line by least squares', status: 'published' },
    { text: 'Window of 6 s', status: 'engineering judgement' },
  ],
};
