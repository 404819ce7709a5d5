/** What is used of fontkit's font and of the font as pdfkit 0.20 holds it; their types name neither. */
type Glyph = { readonly id: number; readonly advanceWidth: number; readonly codePoints: readonly number[] };
type Position = {
  readonly xAdvance: number;
  readonly yAdvance: number;
  readonly xOffset: number;
  readonly yOffset: number;
  readonly advanceWidth: number;
};
export type HeldFont = {
  readonly id: string;
  readonly ref: () => unknown;
  readonly scale: number;
  readonly font: {
    readonly layout: (text: string) => {
      readonly glyphs: readonly Glyph[];
      readonly positions: readonly Position[];
    };
    readonly glyphForCodePoint: (codePoint: number) => Glyph;
  };
  readonly subset: { readonly includeGlyph: (id: number) => number };
  readonly widths: (number | null)[];
  readonly unicode: (readonly number[] | null)[];
  encode: (text: string) => [string[], Position[]];
  widthOfString: (text: string, size: number) => number;
};

const USED = ['id', 'ref', 'scale', 'font', 'subset', 'widths', 'unicode', 'encode', 'widthOfString'];

const isHeld = (value: unknown): value is HeldFont =>
  typeof value === 'object' && value !== null && USED.every((part) => part in value);

/** The font that is set in the document, as pdfkit holds it. Throws where pdfkit is built otherwise. */
export function heldFont(doc: PDFKit.PDFDocument): HeldFont {
  const held: unknown = '_font' in doc ? doc._font : undefined;
  if (!isHeld(held)) throw new Error('This pdfkit keeps its fonts in another way than 0.20 does.');
  return held;
}

/** A letter of a face, the same in every document: its glyph, width in thousandths, code points. */
type Letter = { readonly id: number; readonly advanceWidth: number; readonly codePoints: readonly number[] };

/** Letters and placed pairs by face, kept for the life of the process. Keys are code points. */
type Known = { readonly letters: Map<number, Letter>; readonly pairs: Map<number, Position> };
const known = new Map<string, Known>();

/** One more than the highest code point. */
const CODE_POINTS = 0x110000;
const NOTHING = 0;

export type Placer = {
  /** Width of letters on one line, thousandths of the size. */
  readonly width: (text: string) => number;
  /** The operator that shows the text, with the font's own pair kerning. */
  readonly show: (text: string) => string;
  /** Makes the font known to the present page; answers its name there. */
  readonly use: (doc: PDFKit.PDFDocument) => string;
};

const step = (point: number): number => (point > 0xffff ? 2 : 1);

/**
 * Places the letters of a face one by one with the font's pair kerning, instead of shaping words:
 * the report is written in letters that need no shaping. Ligatures are left out. pdfkit's own
 * `text` places them the same way from then on, so that drawings gain as well.
 */
export function placer(face: string, held: HeldFont): Placer {
  const { font, subset, scale, widths, unicode } = held;
  const kept: Known = known.get(face) ?? { letters: new Map(), pairs: new Map() };
  known.set(face, kept);
  /** The letter's number in this document's part of the font, as it is written. */
  const written = new Map<number, string>();

  const letterOf = (point: number): Letter => {
    let letter = kept.letters.get(point);
    if (letter === undefined) {
      const { id, advanceWidth, codePoints } = font.glyphForCodePoint(point);
      letter = { id, advanceWidth: advanceWidth * scale, codePoints };
      kept.letters.set(point, letter);
    }
    return letter;
  };
  const kernOf = (point: number, next: number, advanceWidth: number): number => {
    const { glyphs, positions } = font.layout(String.fromCodePoint(point, next));
    // Two letters that would join into one are set apart.
    return glyphs.length === 2 ? (positions[0]?.xAdvance ?? 0) * scale - advanceWidth : 0;
  };
  const place = (point: number, next: number): Position => {
    const key = point * CODE_POINTS + next;
    let position = kept.pairs.get(key);
    if (position === undefined) {
      const { advanceWidth } = letterOf(point);
      const xAdvance = advanceWidth + (next === NOTHING ? 0 : kernOf(point, next, advanceWidth));
      position = { xAdvance, yAdvance: 0, xOffset: 0, yOffset: 0, advanceWidth };
      kept.pairs.set(key, position);
    }
    return position;
  };
  const write = (point: number): string => {
    let hex = written.get(point);
    if (hex === undefined) {
      const { id, advanceWidth, codePoints } = letterOf(point);
      const code = subset.includeGlyph(id);
      widths[code] ??= advanceWidth;
      unicode[code] ??= codePoints;
      hex = code.toString(16).padStart(4, '0');
      written.set(point, hex);
    }
    return hex;
  };
  const each = (text: string, take: (point: number, position: Position) => void): void => {
    let point = text.codePointAt(0) ?? NOTHING;
    for (let i = 0; i < text.length;) {
      i += step(point);
      const next = text.codePointAt(i) ?? NOTHING;
      take(point, place(point, next));
      point = next;
    }
  };
  const width = (text: string): number => {
    let sum = 0;
    each(text, (_, { xAdvance }) => {
      sum += xAdvance;
    });
    return sum;
  };

  held.encode = (text) => {
    const hexes: string[] = [];
    const positions: Position[] = [];
    each(text, (point, position) => {
      hexes.push(write(point));
      positions.push(position);
    });
    return [hexes, positions];
  };
  held.widthOfString = (text, size) => (width(text) * size) / 1000;

  return {
    width,
    show(text) {
      let out = '[<';
      each(text, (point, { xAdvance, advanceWidth }) => {
        out += write(point);
        const back = Math.round(advanceWidth - xAdvance);
        if (back !== 0) out += `> ${back} <`;
      });
      return `${out}>] TJ`;
    },
    use(doc) {
      const { page } = doc;
      if (!('fonts' in page)) throw new Error('This pdfkit keeps the fonts of a page in another way.');
      const fonts = page.fonts as Record<string, unknown>;
      fonts[held.id] ??= held.ref();
      return held.id;
    },
  };
}
