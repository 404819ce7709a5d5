import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { readRecorderRun } from '~/db/recorder';
import { RECORDED_SPEED_U, recorderAtPod, type RecorderAtPod } from '~/lib/findings/recorder-at-pod';

/** What the first run in which the POD can be placed says there; null when there is none. */
export const recorderMoment = (loaded: LoadedCase): RecorderAtPod | null =>
  derived(loaded, 'recorder at POD', () => {
    for (const run of loaded.record.recorderRuns) {
      if (run.removed !== null) continue;
      const at = recorderAtPod(loaded.record, run, readRecorderRun(loaded.db, run.id), RECORDED_SPEED_U);
      if (at !== null) return at;
    }
    return null;
  });
