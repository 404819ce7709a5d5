/** The one the address names; the first that stands when it names none, or one that is not there. */
export function chosenOf<T extends { readonly id: string; readonly removed: unknown }>(
  things: readonly T[],
  id: string | null,
): T | null {
  const named = things.find((thing) => thing.id === id);
  return named ?? things.find(({ removed }) => removed === null) ?? null;
}
