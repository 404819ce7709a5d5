/** The child at a key, made and kept when there is none. */
export function childOf<K, V>(parents: Map<K, V>, key: K, make: () => V): V {
  const known = parents.get(key);
  if (known !== undefined) return known;
  const made = make();
  parents.set(key, made);
  return made;
}
