import type { z } from 'zod';

/** A sum of a good part of a second that depends on nothing but its key. */
export type LongSum<T> = {
  /** Everything the value depends on, the version of its method included. */
  readonly key: string;
  /** Of the value as JSON: what was kept elsewhere is checked before it is believed. */
  readonly schema: z.ZodType<T>;
  readonly compute: () => T;
};

/** Answers a long sum, from where it was kept or by computing it. The same key gives the same value. */
export type Keep = <T>(sum: LongSum<T>) => T;

const KEPT = 64;
const known = new Map<string, unknown>();

/** Keeps the last sums of this process. */
export const keepInMemory: Keep = <T>({ key, compute }: LongSum<T>): T => {
  if (known.has(key)) {
    const value = known.get(key) as T;
    known.delete(key);
    known.set(key, value);
    return value;
  }
  const value = compute();
  known.set(key, value);
  for (const oldest of known.keys()) {
    if (known.size <= KEPT) break;
    known.delete(oldest);
  }
  return value;
};
