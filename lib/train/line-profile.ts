import type { Method } from '../findings/finding';
import { combine } from '../readings/uncertainty';

/** One row of a line's profile: `value` holds from one distance to the other; a point where both are the same. */
export type LineRow = {
  /** Distance from the POD, ahead positive, m; either end may come first. */
  readonly fromM: number;
  readonly toM: number;
  readonly value: number;
  readonly u: number;
  /** Standard uncertainty of the distances, m. */
  readonly uPlaceM: number;
};

/** A value along the line, straight between its nodes; two nodes at one place are a step. */
export type Course = {
  readonly nodes: readonly { readonly m: number; readonly value: number; readonly row: number }[];
  readonly rows: readonly LineRow[];
};

const startOf = ({ fromM, toM }: LineRow): number => Math.min(fromM, toM);
const endOf = ({ fromM, toM }: LineRow): number => Math.max(fromM, toM);

/** The rows as a course along the line, in the order of distance; null without a row. */
export function courseOf(rows: readonly LineRow[]): Course | null {
  if (rows.length === 0) return null;
  const order = rows
    .map((_, row) => row)
    .sort((a, b) => startOf(rows[a]!) - startOf(rows[b]!) || endOf(rows[a]!) - endOf(rows[b]!));
  const nodes = order.flatMap((row) => {
    const { value } = rows[row]!;
    const [m, end] = [startOf(rows[row]!), endOf(rows[row]!)];
    return m === end
      ? [{ m, value, row }]
      : [
          { m, value, row },
          { m: end, value, row },
        ];
  });
  return { nodes, rows };
}

export type OnLine = {
  readonly value: number;
  readonly u: number;
  /** Rows it was taken from. */
  readonly rows: readonly number[];
};

/** The value at a distance from the POD, m; null before the first and beyond the last row. At a step, what lies ahead. */
export function valueOnLine({ nodes, rows }: Course, m: number): OnLine | null {
  const first = nodes[0];
  const last = nodes.at(-1);
  if (first === undefined || last === undefined || m < first.m || m > last.m) return null;
  let [low, high] = [0, nodes.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (nodes[middle]!.m <= m) low = middle;
    else high = middle - 1;
  }
  const before = nodes[low]!;
  const after = nodes[low + 1];
  if (after === undefined || before.row === after.row || before.m === m)
    return { value: before.value, u: rows[before.row]!.u, rows: [before.row] };
  const share = (m - before.m) / (after.m - before.m);
  const slope = (after.value - before.value) / (after.m - before.m);
  const [a, b] = [rows[before.row]!, rows[after.row]!];
  return {
    value: before.value + share * (after.value - before.value),
    u: combine((1 - share) * a.u, share * b.u, slope * (1 - share) * a.uPlaceM, slope * share * b.uPlaceM),
    rows: [before.row, after.row],
  };
}

export const lineProfileMethod: Method = {
  id: 'line-profile',
  name: 'Grade and curve under every vehicle from the profile of the line',
  formula:
    'A row with both distances holds from end to end; one with one distance is a point; straight between rows. Taken at the middle of each vehicle, s = Σ lengths ahead of the first derailed vehicle back to this one, the leading end of the first derailed vehicle at the POD.',
  validRange:
    'Between the first and the last row: beyond them nothing is taken. As good as the chart and the consist; stretch of slack is not in it.',
  sources: [{ text: 'Straight-line interpolation', status: 'published' }],
};
