import type { Face, Measure } from './faces';
import type { InkName } from './inks';

/** A stretch of text in one style. `goTo` names a place in the document it leads to. */
export type Run = {
  readonly text: string;
  readonly face?: Face;
  readonly ink?: InkName;
  readonly goTo?: string;
};

/** Text as it is written into the report: plain, or in several styles. A line break is `\n`. */
export type Inline = string | readonly Run[];

export const runsOf = (inline: Inline): readonly Run[] =>
  typeof inline === 'string' ? [{ text: inline }] : inline;

export const plainText = (inline: Inline): string =>
  typeof inline === 'string' ? inline : inline.map(({ text }) => text).join('');

/** Several pieces of text as one, in the order given. */
export const join = (...pieces: readonly Inline[]): readonly Run[] => pieces.flatMap(runsOf);

export const bold = (text: string): Run => ({ text, face: 'bold' });
export const italic = (text: string): Run => ({ text, face: 'italic' });
export const faint = (text: string): Run => ({ text, ink: 'faint' });
export const mono = (text: string): Run => ({ text, face: 'mono' });

/** Letters to be drawn in one stroke of the pen, `x` from the start of the line, points. */
export type Piece = {
  readonly text: string;
  readonly x: number;
  readonly width: number;
  readonly face: Face;
  readonly ink: InkName;
  readonly goTo: string | undefined;
};
export type Line = { readonly pieces: readonly Piece[]; readonly width: number };

export type InlineStyle = { readonly size: number; readonly face?: Face; readonly ink?: InkName };

type Style = Pick<Piece, 'face' | 'ink' | 'goTo'>;

/**
 * Breaks text into lines no wider than `width` points, at spaces; a word that is wider by itself
 * (a hash, a file name) is broken between letters. Empty text gives one empty line.
 */
export function breakLines(
  inline: Inline,
  width: number,
  { size, face = 'body', ink = 'text' }: InlineStyle,
  measure: Measure,
): readonly Line[] {
  const lines: Line[] = [];
  let pieces: Piece[] = [];
  let at = 0;
  /** Space owed before the next word, in the style it was written in. */
  let gap: { readonly style: Style; readonly width: number } | null = null;

  const endLine = (): void => {
    lines.push({ pieces, width: at });
    pieces = [];
    at = 0;
    gap = null;
  };
  const put = (text: string, style: Style, wide: number): void => {
    const last = pieces.at(-1);
    if (last && last.face === style.face && last.ink === style.ink && last.goTo === style.goTo) {
      const joined = gap === null ? text : ` ${text}`;
      pieces[pieces.length - 1] = {
        ...last,
        text: last.text + joined,
        width: last.width + (gap?.width ?? 0) + wide,
      };
      at += (gap?.width ?? 0) + wide;
    } else {
      at += gap?.width ?? 0;
      pieces.push({ text, x: at, width: wide, ...style });
      at += wide;
    }
    gap = null;
  };
  const place = (word: string, style: Style): void => {
    const wide = measure(word, style.face, size);
    const owed: number = gap?.width ?? 0;
    if (at + owed + wide <= width + 0.01) return put(word, style, wide);
    if (at > 0 && gap !== null) endLine();
    if (at + wide <= width + 0.01) return put(word, style, wide);
    let rest = word;
    while (rest !== '') {
      const letters = [...rest];
      let fits = letters.length;
      while (fits > 1 && at + measure(letters.slice(0, fits).join(''), style.face, size) > width + 0.01)
        fits -= 1;
      if (fits === 1 && at > 0 && at + measure(letters[0] ?? '', style.face, size) > width + 0.01) {
        endLine();
        continue;
      }
      const part = letters.slice(0, fits).join('');
      put(part, style, measure(part, style.face, size));
      rest = letters.slice(fits).join('');
      if (rest !== '') endLine();
    }
  };

  for (const run of runsOf(inline)) {
    const style: Style = { face: run.face ?? face, ink: run.ink ?? ink, goTo: run.goTo };
    for (const token of run.text.split(/(\n| +)/)) {
      if (token === '') continue;
      if (token === '\n') endLine();
      else if (token.startsWith(' ')) {
        if (at > 0) gap = { style, width: measure(' ', style.face, size) };
      } else place(token, style);
    }
  }
  if (pieces.length > 0 || lines.length === 0) endLine();
  return lines;
}
