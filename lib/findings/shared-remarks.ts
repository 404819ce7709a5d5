/** A remark on this many findings of one list or more is given once, below it, under a letter. */
const SHARED = 2;

/** Remarks that several findings of a list share, with the letter each is given under: a, b, … z, aa, ab … */
export function sharedRemarks(
  findings: readonly { readonly remarks: readonly string[] }[],
): ReadonlyMap<string, string> {
  const counts = new Map<string, number>();
  for (const { remarks } of findings) {
    for (const remark of new Set(remarks)) counts.set(remark, (counts.get(remark) ?? 0) + 1);
  }
  const shared = [...counts].filter(([, count]) => count >= SHARED);
  return new Map(shared.map(([remark], i) => [remark, letter(i)] as const));
}

const letter = (i: number): string =>
  (i >= 26 ? letter(Math.floor(i / 26) - 1) : '') + String.fromCharCode(97 + (i % 26));
