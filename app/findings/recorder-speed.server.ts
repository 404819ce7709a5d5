import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { readRecorderRun } from '~/db/recorder';
import { firstEmergency } from '~/lib/case/recorder-moments';
import type { RecorderSpeed } from '~/lib/findings/context';
import { findInstrumentKind } from '~/lib/readings/instrument';
import { standardUncertaintyFromHalfWidth } from '~/lib/readings/uncertainty';

/** What a recorder writes speed to, half a mile per hour, as a standard uncertainty in m/s. */
const recordedU = (): number =>
  standardUncertaintyFromHalfWidth(findInstrumentKind('recorder')?.halfWidth.speed ?? 0);

/**
 * Speed at the first emergency sample of the first run that has one: the recorder's nearest
 * statement of the speed at the POD. Null when no run shows an emergency application.
 */
export const recorderSpeed = (loaded: LoadedCase): RecorderSpeed | null =>
  derived(loaded, 'recorder speed', () => {
    for (const run of loaded.record.recorderRuns) {
      if (run.removed !== null || run.channels.emergency === undefined) continue;
      const samples = readRecorderRun(loaded.db, run.id);
      const at = firstEmergency(samples);
      const speedMs = at === null ? NaN : (samples.speed?.[at] ?? NaN);
      if (!Number.isFinite(speedMs)) continue;
      return {
        runId: run.id,
        speedMs,
        uMs: recordedU(),
        remark:
          `Speed at the first emergency sample of the recorder run “${run.name}”. ` +
          'The first wheel may have left the rail some distance before that.',
      };
    }
    return null;
  });
