/** What is wrong with the clock of a run, told and not mended. Times are the run's own, s. */
export type ClockFaults = {
  /** The usual step between samples, s; NaN with fewer than two samples. */
  readonly usualStepS: number;
  /** From the last sample before a pause to the first one after it. */
  readonly gaps: readonly (readonly [fromS: number, toS: number])[];
  /** Index of each sample whose time lies before that of the sample ahead of it. */
  readonly backward: readonly number[];
};

/** A pause this many times the usual step is a gap. */
const GAP_STEPS = 3;

/**
 * Gaps of more than three times the usual step and backward steps of the clock. `time` in s, in the
 * order of the file. The usual step is the median of the steps forward.
 */
export function clockFaults(time: ArrayLike<number>): ClockFaults {
  const forward: number[] = [];
  const backward: number[] = [];
  for (let i = 1; i < time.length; i += 1) {
    const step = time[i]! - time[i - 1]!;
    if (step < 0) backward.push(i);
    else if (step > 0) forward.push(step);
  }
  forward.sort((a, b) => a - b);
  const usualStepS = forward[Math.floor(forward.length / 2)] ?? NaN;
  const gaps: (readonly [number, number])[] = [];
  for (let i = 1; i < time.length; i += 1) {
    if (time[i]! - time[i - 1]! > GAP_STEPS * usualStepS) gaps.push([time[i - 1]!, time[i]!]);
  }
  return { usualStepS, gaps, backward };
}
