import { PRINT_INKS } from './print-inks';
import { drawable, runs } from './runs';
import type { Figure, Ink, Shape, Stroke } from './shapes';

/** Names under which the document registered the two faces of the drawings' letters. */
export type FigureFonts = { readonly body: string; readonly bold: string };

/** Where the figure goes: top left corner and width, points. */
export type Placement = { readonly x: number; readonly y: number; readonly width: number };

type Paint = { readonly stroke?: Stroke; readonly fill?: Ink; readonly fillOpacity?: number };

/** Strokes and fills the path just laid down. */
function paint(doc: PDFKit.PDFDocument, { stroke, fill, fillOpacity }: Paint): void {
  if (fillOpacity !== undefined) doc.save().fillOpacity(fillOpacity);
  if (fill !== undefined) doc.fillColor(PRINT_INKS[fill]);
  if (stroke !== undefined) {
    doc.strokeColor(PRINT_INKS[stroke.ink]).lineWidth(stroke.width);
    if (stroke.dash === undefined) doc.undash();
    // pdfkit takes the whole on/off pattern, though its type says a single length.
    else doc.dash([...stroke.dash] as unknown as number, {});
  }
  if (fill !== undefined && stroke !== undefined) doc.fillAndStroke();
  else if (fill !== undefined) doc.fill();
  else if (stroke !== undefined) doc.stroke();
  if (fillOpacity !== undefined) doc.restore();
}

const seen = (shape: Paint): boolean => shape.fill !== undefined || shape.stroke !== undefined;

function draw(doc: PDFKit.PDFDocument, shape: Shape, fonts: FigureFonts): void {
  switch (shape.type) {
    case 'line':
      if (!drawable(shape.x1, shape.y1, shape.x2, shape.y2) || shape.stroke === undefined) return;
      doc.moveTo(shape.x1, shape.y1).lineTo(shape.x2, shape.y2);
      paint(doc, { stroke: shape.stroke });
      return;
    case 'polyline':
      if (!seen(shape)) return;
      for (const run of runs(shape.points)) {
        doc.moveTo(run[0]!, run[1]!);
        for (let i = 2; i < run.length; i += 2) doc.lineTo(run[i]!, run[i + 1]!);
        if (shape.closed) doc.closePath();
        paint(doc, shape);
      }
      return;
    case 'rect':
      if (!drawable(shape.x, shape.y, shape.width, shape.height) || !seen(shape)) return;
      if (shape.radius === undefined) doc.rect(shape.x, shape.y, shape.width, shape.height);
      else doc.roundedRect(shape.x, shape.y, shape.width, shape.height, shape.radius);
      paint(doc, shape);
      return;
    case 'circle':
      if (!drawable(shape.cx, shape.cy, shape.r) || !seen(shape)) return;
      doc.circle(shape.cx, shape.cy, shape.r);
      paint(doc, shape);
      return;
    case 'text': {
      if (!drawable(shape.x, shape.y, shape.size) || shape.text === '') return;
      doc
        .font(shape.weight === 'bold' ? fonts.bold : fonts.body)
        .fontSize(shape.size)
        .fillColor(PRINT_INKS[shape.ink ?? 'ink']);
      const width = doc.widthOfString(shape.text);
      const shift = shape.anchor === 'middle' ? width / 2 : shape.anchor === 'end' ? width : 0;
      if (shape.rotate !== undefined) {
        doc.save();
        doc.rotate(shape.rotate, { origin: [shape.x, shape.y] });
      }
      doc.text(shape.text, shape.x - shift, shape.y, { lineBreak: false, baseline: 'alphabetic' });
      if (shape.rotate !== undefined) doc.restore();
      return;
    }
    case 'group':
      for (const each of shape.shapes) draw(doc, each, fonts);
  }
}

/**
 * Draws the figure as vectors and returns its height in points. The document's text position
 * is as before afterwards; face, size and colour of letters are to be set again by the caller. Never starts a page: the caller leaves room (height/width · width).
 */
export function drawFigure(
  doc: PDFKit.PDFDocument,
  figure: Figure,
  { x, y, width }: Placement,
  fonts: FigureFonts,
): number {
  const scale = width / figure.width;
  const textAt = { x: doc.x, y: doc.y };
  doc.save();
  doc.translate(x, y).scale(scale).lineJoin('round').lineCap('butt');
  for (const shape of figure.shapes) draw(doc, shape, fonts);
  doc.restore();
  doc.x = textAt.x;
  doc.y = textAt.y;
  return figure.height * scale;
}
