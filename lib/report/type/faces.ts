import { createRequire } from 'node:module';
import { placeLettersQuickly } from './quick-layout';

/** The faces of the report's letters. Drawings have their own two, whose widths lib/figures knows. */
export const FACES = {
  body: 'DejaVuSansCondensed.ttf',
  bold: 'DejaVuSansCondensed-Bold.ttf',
  italic: 'DejaVuSansCondensed-Oblique.ttf',
  mono: 'DejaVuSansMono.ttf',
  figure: 'DejaVuSans.ttf',
  figureBold: 'DejaVuSans-Bold.ttf',
} as const;
export type Face = keyof typeof FACES;

/** Makes the faces known to a document under their names. */
export function registerFaces(doc: PDFKit.PDFDocument): void {
  const { resolve } = createRequire(import.meta.url);
  for (const [face, file] of Object.entries(FACES)) {
    doc.registerFont(face, resolve(`dejavu-fonts-ttf/ttf/${file}`)).font(face);
    placeLettersQuickly(doc, face);
  }
}

/** Width of letters on one line, points. */
export type Measure = (text: string, face: Face, size: number) => number;

/** Measures with the document's own fonts; a word is measured once per face, whatever its size. */
export function measureWith(doc: PDFKit.PDFDocument): Measure {
  const known = new Map<Face, Map<string, number>>();
  return (text, face, size) => {
    let widths = known.get(face);
    if (widths === undefined) known.set(face, (widths = new Map()));
    let perThousand = widths.get(text);
    if (perThousand === undefined) {
      perThousand = doc.font(face).fontSize(1000).widthOfString(text);
      widths.set(text, perThousand);
    }
    return (perThousand * size) / 1000;
  };
}
