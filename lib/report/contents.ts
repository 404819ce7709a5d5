import type { Pages } from './pages';
import type { Paper } from './paper';
import { INK } from './type/inks';
import type { Lettering, Stroke } from './type/lettering';

const SIZE = 9.6;
const LEAD = 21;
const NUMBER = 74;

/** Draws the table of contents, with page numbers that lead there, on the present page. */
export function drawContents(
  doc: PDFKit.PDFDocument,
  pages: Pages,
  paper: Paper,
  { measure, write }: Lettering,
): void {
  let y = paper.top + 15;
  const strokes: Stroke[] = [
    { text: 'Contents', face: 'bold', size: 15, x: paper.left, baseline: y, ink: 'text' },
  ];
  doc
    .moveTo(paper.left, y + 8)
    .lineTo(paper.right, y + 8)
    .lineWidth(0.8)
    .strokeColor(INK.accent)
    .stroke();
  y += 34;
  for (const { number, title, anchor, page } of pages.contents()) {
    const pageWidth = measure(String(page), 'body', SIZE);
    const entry = { size: SIZE, baseline: y } as const;
    strokes.push(
      { ...entry, text: number, face: 'bold', x: paper.left, ink: 'accent' },
      { ...entry, text: title, face: 'body', x: paper.left + NUMBER, ink: 'text' },
      { ...entry, text: String(page), face: 'body', x: paper.right - pageWidth, ink: 'text' },
    );
    const from = paper.left + NUMBER + measure(title, 'body', SIZE) + 8;
    const to = paper.right - pageWidth - 8;
    if (to > from) {
      doc
        .moveTo(from, y)
        .lineTo(to, y)
        .lineWidth(0.5)
        .dash(0.6, { space: 3 })
        .strokeColor(INK.faint)
        .stroke()
        .undash();
    }
    doc.goTo(paper.left, y - SIZE, paper.right - paper.left, LEAD * 0.8, anchor);
    y += LEAD;
  }
  write(strokes);
}
