import type { LoadedCase } from '~/app/case.server';
import type { Assessment } from '~/lib/explanations/assess';
import { runJob } from './worker.server';

const KEPT = 8;
const cache = new Map<string, Promise<Assessment>>();

/** Findings and argument of the case as it stands, made in the worker once per state of the case. */
export function assessmentOf({ caseId, head }: LoadedCase): Promise<Assessment> {
  const key = `${caseId}\n${head}`;
  const known = cache.get(key);
  if (known !== undefined) return known;
  const made = runJob<'assess'>({ kind: 'assess', caseId });
  cache.set(key, made);
  // A failure must not be remembered as the answer.
  made.catch(() => cache.delete(key));
  for (const oldest of cache.keys()) {
    if (cache.size <= KEPT) break;
    cache.delete(oldest);
  }
  return made;
}
