import { createRequire } from 'node:module';
import PDFDocument from 'pdfkit';
import { drawFigure } from '~/lib/figures/pdf';
import type { Figure } from '~/lib/figures/shapes';

export type Primitive = {
  readonly kind: 'path' | 'text';
  /** Points of the path in order, or where the text begins. Figure coordinates. */
  readonly points: readonly (readonly [number, number])[];
};

const require = createRequire(import.meta.url);
const FONT_FILES = {
  body: require.resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf'),
  bold: require.resolve('dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf'),
};
export const FONTS = { body: 'body', bold: 'bold' };

export function newDocument(compress: boolean, size: [number, number] = [1400, 1400]): PDFKit.PDFDocument {
  const doc = new PDFDocument({ compress, size, margin: 0, font: FONT_FILES.body });
  doc.registerFont('body', FONT_FILES.body);
  doc.registerFont('bold', FONT_FILES.bold);
  return doc;
}

export const bytesOf = async (doc: PDFKit.PDFDocument): Promise<Buffer> => {
  const chunks: Buffer[] = [];
  const done = new Promise<Buffer>((resolve) => {
    doc.on('data', (chunk: Buffer) => chunks.push(chunk));
    doc.on('end', () => resolve(Buffer.concat(chunks)));
  });
  doc.end();
  return done;
};

type Matrix = readonly [number, number, number, number, number, number];

const times = (a: Matrix, b: Matrix): Matrix => [
  a[0] * b[0] + a[1] * b[2],
  a[0] * b[1] + a[1] * b[3],
  a[2] * b[0] + a[3] * b[2],
  a[2] * b[1] + a[3] * b[3],
  a[4] * b[0] + a[5] * b[2] + b[4],
  a[4] * b[1] + a[5] * b[3] + b[5],
];

/** What the content stream of the page really draws, followed through its transformations. */
function primitives(content: string, toFigure: (x: number, y: number) => [number, number]): Primitive[] {
  const found: Primitive[] = [];
  let ctm: Matrix = [1, 0, 0, 1, 0, 0];
  const stack: Matrix[] = [];
  let operands: number[] = [];
  let path: [number, number][] = [];
  const at = (x: number, y: number): [number, number] =>
    toFigure(x * ctm[0] + y * ctm[2] + ctm[4], x * ctm[1] + y * ctm[3] + ctm[5]);
  for (const token of content.split(/\s+/)) {
    if (/^[-+.\d]/.test(token)) {
      operands.push(Number(token));
      continue;
    }
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = operands;
    if (token === 'q') stack.push(ctm);
    else if (token === 'Q') ctm = stack.pop()!;
    else if (token === 'cm') ctm = times([a, b, c, d, e, f], ctm);
    else if (token === 'm' || token === 'l') path.push(at(a, b));
    else if (token === 'c') path.push(at(e, f));
    else if (token === 're') path.push(at(a, b), at(a + c, b + d));
    else if (token === 'S' || token === 'f' || token === 'B') {
      found.push({ kind: 'path', points: path });
      path = [];
    } else if (token === 'Tm') found.push({ kind: 'text', points: [at(e, f)] });
    operands = [];
  }
  return found;
}

/** The figure drawn at (x, y) of a real page, and its primitives read back from the page. */
export async function pdfPrimitives(figure: Figure): Promise<Primitive[]> {
  const placed = { x: 37, y: 53, width: figure.width * 0.75 };
  const doc = newDocument(false);
  drawFigure(doc, figure, placed, FONTS);
  const bytes = (await bytesOf(doc)).toString('latin1');
  const content = /stream\r?\n([\s\S]*?)\r?\nendstream/.exec(bytes)![1]!;
  return primitives(content, (x, y) => [(x - placed.x) / 0.75, (1400 - y - placed.y) / 0.75]);
}

/** Width of a line of letters as the document's own font measures it. */
export function documentTextWidth(): (text: string, size: number, bold: boolean) => number {
  const doc = newDocument(false);
  return (text, size, bold) =>
    doc
      .font(bold ? 'bold' : 'body')
      .fontSize(size)
      .widthOfString(text);
}
