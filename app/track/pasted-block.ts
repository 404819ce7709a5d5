/**
 * A block copied from a spreadsheet as rows of cells: tabs between cells, a line per row, and
 * quotation marks only around a cell that itself holds a tab, a line or a quotation mark. A
 * quotation mark elsewhere is an inch mark and stays. One line end after the last row is dropped.
 */
export function pastedBlock(text: string): readonly (readonly string[])[] {
  const rows: string[][] = [[]];
  let at = 0;
  const lines = text.replace(/\r\n?/g, '\n').replace(/\n$/, '');
  for (;;) {
    const quoted = QUOTED.exec(lines.slice(at));
    const end = quoted ? at + quoted[0].length : nextBreak(lines, at);
    const cell = quoted ? (quoted[1] ?? '').replaceAll('""', '"') : lines.slice(at, end);
    rows.at(-1)?.push(cell);
    if (end >= lines.length) return rows;
    if (lines[end] === '\n') rows.push([]);
    at = end + 1;
  }
}

/** A quoted cell counts as one only when a tab, a line end or the end follows it. */
const QUOTED = /^"((?:[^"]|"")*)"(?=[\t\n]|$)/;

function nextBreak(text: string, from: number): number {
  for (let at = from; at < text.length; at += 1) if (text[at] === '\t' || text[at] === '\n') return at;
  return text.length;
}
