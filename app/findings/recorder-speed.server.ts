import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { readRecorderRun } from '~/db/recorder';
import type { FindingOptions } from '~/lib/findings/context';
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

/** The recorder's part of what findings are computed with. */
export function recorderOptions(loaded: LoadedCase): FindingOptions['recorder'] {
  const atPod = recorderMoment(loaded);
  if (atPod === null) return { speedAtPod: null };
  const { runId, speedMs, uMs, remark, placedBy } = atPod;
  return { speedAtPod: { runId, speedMs, uMs, remark, placedBy }, atPod };
}
