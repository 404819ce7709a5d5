import { firstEmergency, sampleBackFromStop, type RunSamples } from '../case/recorder-moments';
import { refuse, ok, type Result } from '../readings/result';

/** What somebody said of where in the run the POD was passed, and of the train between. */
export type PodChoice = {
  /** Number of the sample, counted from 1; null when nobody chose one. */
  readonly sample: number | null;
  /** From the POD to the leading end of the recording vehicle where it stopped, m; null when not measured. */
  readonly backM: number | null;
  /** From the leading end of the recording vehicle back to that of the first derailed one, m; null when not known. */
  readonly alongTrainM: number | null;
};

export type PodPlacing = {
  /** Index of the sample. */
  readonly index: number;
  readonly by: 'sample' | 'backFromStop' | 'emergency';
  /** The distance back from the stop was shortened by the length of train ahead of the first derailed vehicle. */
  readonly alongTrain: boolean;
};

/**
 * The sample at which the first derailed vehicle came to the POD: the sample somebody chose, else
 * the one found by the distance back from the stop, else the first with the emergency application
 * on. Refuses, saying what to enter instead, when a choice does not fit the run; null when
 * nothing places the POD.
 */
export function placePod(samples: RunSamples, choice: PodChoice): Result<PodPlacing | null> {
  const rows = samples.time?.length ?? 0;
  if (choice.sample !== null) {
    const index = choice.sample - 1;
    if (!(index >= 0 && index < rows))
      return refuse(`The run has ${rows} samples. Enter a number from 1 to ${rows}.`);
    return ok({ index, by: 'sample', alongTrain: false });
  }
  if (choice.backM !== null) {
    const backM = choice.backM - (choice.alongTrainM ?? 0);
    if (backM <= 0)
      return refuse(
        'The recording vehicle stopped nearer to the POD than the first derailed vehicle is behind it: enter the distance from the POD to the leading end of the recording vehicle.',
      );
    const found = sampleBackFromStop(samples, backM);
    return found.ok
      ? ok({ index: found.value, by: 'backFromStop', alongTrain: choice.alongTrainM !== null })
      : found;
  }
  const index = firstEmergency(samples);
  return ok(index === null ? null : { index, by: 'emergency', alongTrain: false });
}
