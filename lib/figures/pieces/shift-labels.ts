/**
 * Places labels along a line without overlap: each keeps as near as it can to where it belongs, in
 * order, within `low` to `high`. `widths` are full widths; the result are their middles. When there
 * is too little room for all they are spread evenly and do overlap.
 */
export function shiftApart(
  wanted: readonly number[],
  widths: readonly number[],
  low: number,
  high: number,
): readonly number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]! - wanted[b]!);
  const total = widths.reduce((sum, width) => sum + width, 0);
  const squeeze = Math.min(1, (high - low) / Math.max(total, 1e-9));
  const half = (i: number): number => (widths[i]! / 2) * squeeze;
  const placed = [...wanted];
  let edge = low;
  for (const i of order) {
    placed[i] = Math.max(wanted[i]!, edge + half(i));
    edge = placed[i]! + half(i);
  }
  edge = high;
  for (const i of [...order].reverse()) {
    placed[i] = Math.min(placed[i]!, edge - half(i));
    edge = placed[i]! - half(i);
  }
  return placed;
}
