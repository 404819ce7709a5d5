import type { CaseRecord } from '~/lib/case/record';
import type { Db } from './open';

/** A large case is some thousand rows and is read on every screen, but changes only with its log. */
const KEPT = 8;

type Kept = { readonly head: string; readonly record: CaseRecord };
const caches = new WeakMap<Db, Map<string, Kept>>();

/** The record of the case at this head: the kept one, or read anew. The longest unused one is dropped. */
export function recalled(db: Db, caseId: string, head: string, read: () => CaseRecord): CaseRecord {
  const cache = caches.get(db) ?? new Map<string, Kept>();
  caches.set(db, cache);
  const kept = cache.get(caseId);
  const now = kept?.head === head ? kept : { head, record: read() };
  cache.delete(caseId);
  cache.set(caseId, now);
  for (const oldest of cache.keys()) {
    if (cache.size <= KEPT) break;
    cache.delete(oldest);
  }
  return now.record;
}
