/** A finding's title where the thing it is about stands above it: without ", axle 1, 23 · XYZ 4512". */
export function shortTitle(title: string, name: string): string {
  const at = title.toLowerCase().lastIndexOf(`, ${name.toLowerCase()}`);
  return at <= 0 ? title : title.slice(0, at) + title.slice(at + 2 + name.length);
}
