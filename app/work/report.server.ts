import { existsSync } from 'node:fs';
import type { LoadedCase } from '~/app/case.server';
import { runJob } from './worker.server';

const KEPT = 8;
const cache = new Map<string, Promise<string>>();

/** Path of the report of the case as it stands, built in the worker once per state of the case. */
export async function reportOf({ caseId, head }: LoadedCase): Promise<string> {
  const key = `${caseId}\n${head}`;
  const known = await cache.get(key)?.catch(() => null);
  if (known !== undefined && known !== null && existsSync(known)) return known;
  const made = runJob<'report'>({ kind: 'report', caseId });
  cache.set(key, made);
  for (const oldest of cache.keys()) {
    if (cache.size <= KEPT) break;
    cache.delete(oldest);
  }
  return made;
}
