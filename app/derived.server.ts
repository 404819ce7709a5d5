import type { LoadedCase } from './case.server';

const KEPT = 64;
const cache = new Map<string, unknown>();

/**
 * What `compute` makes of this state of the case, computed once and kept until the case changes.
 * `what` names it within the case; the value must depend on nothing but the case.
 */
export function derived<T>({ caseId, head }: LoadedCase, what: string, compute: () => T): T {
  const key = `${caseId}\n${head}\n${what}`;
  if (cache.has(key)) {
    const value = cache.get(key) as T;
    cache.delete(key);
    cache.set(key, value);
    return value;
  }
  const value = compute();
  cache.set(key, value);
  for (const oldest of cache.keys()) {
    if (cache.size <= KEPT) break;
    cache.delete(oldest);
  }
  return value;
}
