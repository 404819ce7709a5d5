import { INK, type InkName } from './inks';
import { FACES, pathOfFace, type Face, type Measure } from './faces';
import { heldFont, placer, type Placer } from './placing';

/** Letters in one style on one baseline; `x` and `baseline` in points from the page's top left. */
export type Stroke = {
  readonly text: string;
  readonly x: number;
  readonly baseline: number;
  readonly size: number;
  readonly face: Face;
  readonly ink: InkName;
};

export type Lettering = {
  readonly measure: Measure;
  /** Writes on the present page, in the order given. */
  readonly write: (strokes: readonly Stroke[]) => void;
};

const coordinate = (value: number): string => String(Math.round(value * 1000) / 1000);

const rgb = (hex: string): string =>
  [1, 3, 5].map((at) => coordinate(parseInt(hex.slice(at, at + 2), 16) / 255)).join(' ');

const COLOURS = Object.fromEntries(
  Object.entries(INK).map(([name, hex]) => [name, `${rgb(hex)} rg`]),
) as Readonly<Record<InkName, string>>;

/**
 * The letters of a document: its faces opened, measured and written.
 *
 * Many strokes go into the page as one piece of content. pdfkit's own way opens and closes a
 * graphics state for each and shapes each word; with it, setting the report took longer than
 * writing two hundred photos. A word is measured once per face, whatever its size.
 */
export function createLettering(doc: PDFKit.PDFDocument): Lettering {
  const faces = {} as Record<Face, Placer>;
  for (const face of Object.keys(FACES) as Face[]) {
    doc.registerFont(face, pathOfFace(face)).font(face);
    faces[face] = placer(face, heldFont(doc));
  }
  const widths = Object.fromEntries(
    Object.keys(FACES).map((face) => [face, new Map<string, number>()]),
  ) as Record<Face, Map<string, number>>;

  return {
    measure(text, face, size) {
      const known = widths[face];
      let perThousand = known.get(text);
      if (perThousand === undefined) known.set(text, (perThousand = faces[face].width(text)));
      return (perThousand * size) / 1000;
    },
    write(strokes) {
      const { height } = doc.page;
      // pdfkit turns the page upside down; letters are written the right way up.
      const parts = [`q 1 0 0 -1 0 ${coordinate(height)} cm`, 'BT'];
      let set = '';
      let colour = '';
      for (const { text, x, baseline, size, face, ink } of strokes) {
        if (text === '') continue;
        const placed = faces[face];
        const font = `/${placed.use(doc)} ${coordinate(size)} Tf`;
        if (font !== set) parts.push((set = font));
        if (COLOURS[ink] !== colour) parts.push((colour = COLOURS[ink]));
        parts.push(`1 0 0 1 ${coordinate(x)} ${coordinate(height - baseline)} Tm`, placed.show(text));
      }
      parts.push('ET', 'Q');
      doc.addContent(parts.join('\n'));
    },
  };
}
