/** Rows `from` up to, not including, `to`, standing together on one page. */
export type Chunk = { readonly from: number; readonly to: number };

export type TableRoom = {
  /** Height of the repeated heading row. */
  readonly head: number;
  /** Room left on the page the table starts on, and on every page after it. */
  readonly first: number;
  readonly next: number;
  /** The table may be started on the next page instead. */
  readonly mayMove: boolean;
};

/** Fewest rows that may stand alone at the foot or at the head of a page. */
const FEWEST = 2;

/**
 * Which rows of a table stand on which page. A row is never divided; the heading is repeated and
 * never stands alone; one row is not left behind on either side where that can be avoided. One
 * empty chunk is the answer when the table is better started on the next page. Heights are points;
 * a row higher than a page has a chunk to itself. `headsNext` rows are never the last on a page.
 */
export function planPages(
  heights: readonly number[],
  { head, first, next, mayMove }: TableRoom,
  headsNext: (row: number) => boolean = () => false,
): readonly Chunk[] {
  const chunks: Chunk[] = [];
  let from = 0;
  let room = first - head;
  while (from < heights.length) {
    let to = from;
    let used = 0;
    while (to < heights.length && used + (heights[to] ?? 0) <= room) {
      used += heights[to] ?? 0;
      to += 1;
    }
    const left = heights.length - to;
    if (mayMove && chunks.length === 0 && left > 0 && to - from < FEWEST) return [{ from: 0, to: 0 }];
    if (to === from) to = from + 1;
    else if (left > 0 && left < FEWEST && to - from > FEWEST) to -= FEWEST - left;
    while (to < heights.length && to - from > 1 && headsNext(to - 1)) to -= 1;
    chunks.push({ from, to });
    from = to;
    room = next - head;
  }
  return chunks;
}
