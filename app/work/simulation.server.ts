import type { LoadedCase } from '~/app/case.server';
import type { NotSimulated, SimulatedForces } from '~/lib/findings/train/simulated-forces';
import { runJob } from './worker.server';

const KEPT = 8;
const cache = new Map<string, Promise<SimulatedForces | NotSimulated>>();

/** Coupler forces through the recorder run, simulated in the worker once per state of the case. */
export function simulationOf({ caseId, head }: LoadedCase): Promise<SimulatedForces | NotSimulated> {
  const key = `${caseId}\n${head}`;
  const known = cache.get(key);
  if (known !== undefined) return known;
  const made = runJob<'simulate'>({ kind: 'simulate', caseId });
  cache.set(key, made);
  // A failure must not be remembered as the answer.
  made.catch(() => cache.delete(key));
  for (const oldest of cache.keys()) {
    if (cache.size <= KEPT) break;
    cache.delete(oldest);
  }
  return made;
}
