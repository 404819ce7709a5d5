/** What a column needs: the width of its longest word, and of its longest cell on one line. */
export type ColumnNeed = {
  readonly least: number;
  readonly natural: number;
  /** Fixed width in points; the column takes this and no more. */
  readonly fixed?: number;
};

/**
 * Widths of a table's columns, points, together `width`. Every column gets its longest word as far
 * as there is room; what is left goes first to columns that could still take it, in proportion to
 * what they lack, then to all in proportion to what they have.
 */
export function columnWidths(needs: readonly ColumnNeed[], width: number): readonly number[] {
  const widths = needs.map(({ least, fixed }) => fixed ?? least);
  const total = (): number => widths.reduce((sum, each) => sum + each, 0);
  const open = needs.map(({ fixed }) => fixed === undefined);
  if (total() > width) {
    const fixed = needs.reduce((sum, need) => sum + (need.fixed ?? 0), 0);
    const flexible = total() - fixed;
    const shrink = flexible > 0 ? Math.max(0.1, (width - fixed) / flexible) : 1;
    return widths.map((each, i) => (open[i] ? each * shrink : each));
  }
  const lacks = needs.map(({ natural, least, fixed }) =>
    fixed === undefined ? Math.max(0, natural - least) : 0,
  );
  const lack = lacks.reduce((sum, each) => sum + each, 0);
  const spare = width - total();
  if (lack > spare) return widths.map((each, i) => each + (spare * (lacks[i] ?? 0)) / lack);
  const filled = widths.map((each, i) => each + (lacks[i] ?? 0));
  const rest = spare - lack;
  const share = filled.reduce((sum, each, i) => sum + (open[i] ? each : 0), 0);
  return filled.map((each, i) => (open[i] && share > 0 ? each + (rest * each) / share : each));
}
