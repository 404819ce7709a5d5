import type { LoadedCase } from '~/app/case.server';
import type { Actor } from '~/db/actor';
import { StagedImportGone } from '~/db/imports';
import { addTrace } from '~/db/traces';
import type { TraceMaking, TraceUncertainty } from '~/lib/case/trace';
import type { Outline } from '~/lib/outline/outline';
import { ok, refuse, type Result } from '~/lib/readings/result';
import type { TraceAbout } from './about';
import type { NewSaid } from './said.server';

/** A line with the file it came from, that waits to be kept. */
export type Drawn = {
  readonly outline: Outline;
  readonly making: TraceMaking;
  readonly uncertainty: TraceUncertainty;
  readonly sha256: string;
  readonly fileName: string;
  readonly stagedImportId?: string;
};

/** x0, y0, x1, y1, … as a trace is kept. */
export const pairsOf = ({ xMm, yMm }: Outline): Float64Array =>
  Float64Array.from({ length: xMm.length * 2 }, (_, i) => (i % 2 === 0 ? xMm : yMm)[i >> 1] ?? NaN);

/** Keeps the line as an outline of the case and answers its id. */
export function keepTrace(
  { db, caseId }: LoadedCase,
  about: TraceAbout,
  { outline, making, ...drawn }: Drawn,
  { behind, ...said }: NewSaid,
  form: FormData,
  actor: Actor,
): Result<string> {
  try {
    const plumb = about.shape === 'rail' && form.get('plumb') !== null;
    const given = {
      ...about,
      ...drawn,
      ...said,
      making: {
        ...making,
        ...(plumb ? { plumb: true as const } : {}),
        ...(behind === null ? {} : { behindEntered: behind.entered }),
      },
      pointsMm: pairsOf(outline),
      behindMm: behind && behind.mm,
      hand: null,
    };
    return ok(addTrace(db, caseId, given, actor));
  } catch (error) {
    if (error instanceof StagedImportGone) return refuse(error.message);
    throw error;
  }
}
