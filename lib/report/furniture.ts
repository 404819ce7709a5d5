import type { Paper } from './paper';
import { breakLines } from './type/inline';
import { INK } from './type/inks';
import type { Lettering, Stroke } from './type/lettering';

export type Furniture = {
  readonly running: string;
  readonly section: string;
  readonly documentId: string;
  readonly page: number;
  readonly of: number;
};

const SIZE = 7.6;

/** Running head and foot of one page. The cover carries only the foot. */
export function drawFurniture(
  doc: PDFKit.PDFDocument,
  { width, height, left, right }: Paper,
  { running, section, documentId, page, of }: Furniture,
  { measure, write }: Lettering,
): void {
  const put = (text: string, y: number, align: 'left' | 'right', room: number): Stroke => {
    const fit = breakLines(text, room, { size: SIZE }, measure)[0];
    const shown = fit?.pieces.map((piece) => piece.text).join('') ?? '';
    const cut = shown === text ? shown : `${shown} …`;
    const x = align === 'left' ? left : right - measure(cut, 'body', SIZE);
    return { text: cut, x, baseline: y, size: SIZE, face: 'body', ink: 'faint' };
  };
  const rule = (y: number): void => {
    doc.moveTo(left, y).lineTo(right, y).lineWidth(0.4).strokeColor(INK.rule).stroke();
  };
  const room = right - left;
  doc.markContent('Artifact', { type: 'Pagination', bbox: [0, 0, width, height] });
  const strokes = [
    put(documentId, height - 34, 'left', room * 0.75),
    put(`Page ${page} of ${of}`, height - 34, 'right', room * 0.25),
  ];
  rule(height - 46);
  if (page > 1) {
    strokes.push(put(running, 46, 'left', room * 0.58), put(section, 46, 'right', room * 0.38));
    rule(52);
  }
  write(strokes);
  doc.endMarkedContent();
}
