/** What is used of a font as pdfkit 0.20 holds it, and of fontkit's font inside it. */
type Glyph = { readonly id: number; readonly advanceWidth: number; readonly codePoints: readonly number[] };
type Position = {
  readonly xAdvance: number;
  readonly yAdvance: number;
  readonly xOffset: number;
  readonly yOffset: number;
  readonly advanceWidth: number;
};
type Shaped = { readonly glyphs: readonly Glyph[]; readonly positions: readonly Position[] };
type EmbeddedFont = {
  readonly scale: number;
  readonly font: {
    readonly layout: (text: string) => Shaped;
    readonly glyphForCodePoint: (codePoint: number) => Glyph;
  };
  readonly subset: { readonly includeGlyph: (id: number) => number };
  readonly widths: (number | null)[];
  readonly unicode: (readonly number[] | null)[];
  encode: (text: string) => [string[], Position[]];
  widthOfString: (text: string, size: number) => number;
};

/** A letter of a face, the same in every document: its glyph, width in thousandths, code points. */
type Letter = { readonly id: number; readonly advanceWidth: number; readonly codePoints: readonly number[] };

/** Letters and placed pairs by face, kept for the life of the process. Keys are code points. */
type Known = { readonly letters: Map<number, Letter>; readonly pairs: Map<number, Position> };
const known = new Map<string, Known>();

/** One more than the highest code point. */
const CODE_POINTS = 0x110000;
const NOTHING = 0;

const isEmbedded = (value: unknown): value is EmbeddedFont =>
  typeof value === 'object' &&
  value !== null &&
  ['encode', 'widthOfString', 'subset', 'widths', 'unicode', 'font'].every((part) => part in value);

/**
 * Lets the face that is set in `doc` place its letters one by one with the font's own pair kerning,
 * instead of shaping each word anew. The report is written in letters that need no shaping; shaping
 * its words would take longer than writing two hundred photos. Ligatures are left out.
 */
export function placeLettersQuickly(doc: PDFKit.PDFDocument, face: string): void {
  const held: unknown = '_font' in doc ? doc._font : undefined;
  // A pdfkit built otherwise still sets the text right, only slower.
  if (!isEmbedded(held)) return;
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

  held.encode = (text) => {
    const hexes: string[] = [];
    const positions: Position[] = [];
    let point = text.codePointAt(0) ?? NOTHING;
    for (let i = 0; i < text.length;) {
      i += point > 0xffff ? 2 : 1;
      const next = text.codePointAt(i) ?? NOTHING;
      hexes.push(write(point));
      positions.push(place(point, next));
      point = next;
    }
    return [hexes, positions];
  };
  held.widthOfString = (text, size) => {
    let width = 0;
    let point = text.codePointAt(0) ?? NOTHING;
    for (let i = 0; i < text.length;) {
      i += point > 0xffff ? 2 : 1;
      const next = text.codePointAt(i) ?? NOTHING;
      width += place(point, next).xAdvance;
      point = next;
    }
    return (width * size) / 1000;
  };
}
