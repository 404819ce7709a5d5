import type { KeyInput } from '../key-input';
import type { Taken } from '../reading-index';

/** A key input as a value with its readings; null when nobody measured it. */
export const takenFrom = ({ measured }: KeyInput): Taken | null =>
  measured === null
    ? null
    : {
        value: measured.value,
        u: measured.u,
        readings: measured.readings,
        remarks: measured.remark === '' ? [] : [measured.remark],
      };

/** The inputs if all were measured, else the words for those that were not. */
export function allOf<Name extends string>(
  wanted: Readonly<Record<Name, readonly [Taken | null, string]>>,
): { readonly all: Readonly<Record<Name, Taken>> } | { readonly missing: readonly string[] } {
  const entries = Object.entries<readonly [Taken | null, string]>(wanted);
  const missing = entries.flatMap(([, [taken, words]]) => (taken === null ? [words] : []));
  if (missing.length > 0) return { missing };
  return {
    all: Object.fromEntries(entries.map(([name, [taken]]) => [name, taken])) as Record<Name, Taken>,
  };
}
