import type { Pages } from './pages';
import type { Paper } from './paper';
import type { Measure } from './type/faces';
import { INK } from './type/inks';

const SIZE = 9.6;
const LEAD = 21;
const NUMBER = 74;

/** Draws the table of contents, with page numbers that lead there, on the present page. */
export function drawContents(doc: PDFKit.PDFDocument, pages: Pages, paper: Paper, measure: Measure): void {
  const put = (
    text: string,
    face: 'body' | 'bold',
    size: number,
    x: number,
    y: number,
    ink: string,
  ): void => {
    doc
      .font(face)
      .fontSize(size)
      .fillColor(ink)
      .text(text, x, y, { lineBreak: false, baseline: 'alphabetic' });
  };
  let y = paper.top + 15;
  put('Contents', 'bold', 15, paper.left, y, INK.text);
  doc
    .moveTo(paper.left, y + 8)
    .lineTo(paper.right, y + 8)
    .lineWidth(0.8)
    .strokeColor(INK.accent)
    .stroke();
  y += 34;
  for (const { number, title, anchor, page } of pages.contents()) {
    const pageText = String(page);
    const pageWidth = measure(pageText, 'body', SIZE);
    put(number, 'bold', SIZE, paper.left, y, INK.accent);
    put(title, 'body', SIZE, paper.left + NUMBER, y, INK.text);
    put(pageText, 'body', SIZE, paper.right - pageWidth, y, INK.text);
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
}
