import type { CaseRecord } from '~/lib/case/record';
import type { Db } from './open';

/** A large case is some thousand rows and is read on every screen, but changes only with its log. */
const KEPT = 8;

type Kept = { readonly head: string; readonly record: CaseRecord };
const caches = new WeakMap<Db, Map<string, Kept>>();

const cacheOf = (db: Db): Map<string, Kept> => {
  const cache = caches.get(db) ?? new Map<string, Kept>();
  caches.set(db, cache);
  return cache;
};

/** The kept record of the case at this head; null when it has to be read. */
export function recalled(db: Db, caseId: string, head: string): CaseRecord | null {
  const kept = cacheOf(db).get(caseId);
  return kept?.head === head ? remember(db, caseId, head, kept.record) : null;
}

/** Keeps the record of the case at this head and answers it. The longest unused one is dropped. */
export function remember(db: Db, caseId: string, head: string, record: CaseRecord): CaseRecord {
  const cache = cacheOf(db);
  cache.delete(caseId);
  cache.set(caseId, { head, record });
  for (const oldest of cache.keys()) {
    if (cache.size <= KEPT) break;
    cache.delete(oldest);
  }
  return record;
}
