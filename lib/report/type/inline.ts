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
type Part = { readonly text: string; readonly style: Style; readonly width: number };

const sameStyle = (a: Style, b: Style): boolean => a.face === b.face && a.ink === b.ink && a.goTo === b.goTo;

/**
 * Breaks text into lines no wider than `width` points, at spaces; what stands together without a
 * space stays together even where its style changes. A word that is wider than a line by itself (a
 * hash, a file name) is broken between letters. Empty text gives one empty line.
 */
export function breakLines(
  inline: Inline,
  width: number,
  { size, face = 'body', ink = 'text' }: InlineStyle,
  measure: Measure,
): readonly Line[] {
  const most = width + 0.01;
  const lines: Line[] = [];
  let pieces: Piece[] = [];
  let at = 0;
  /** Space owed before the next word, as wide as in the style it was written in. */
  let gap = 0;
  let word: Part[] = [];

  const endLine = (): void => {
    lines.push({ pieces, width: at });
    pieces = [];
    at = 0;
    gap = 0;
  };
  const put = ({ text, style, width: wide }: Part): void => {
    const last = pieces.at(-1);
    if (last !== undefined && sameStyle(last, style)) {
      pieces[pieces.length - 1] = {
        ...last,
        text: last.text + (gap > 0 ? ' ' : '') + text,
        width: last.width + gap + wide,
      };
    } else pieces.push({ text, x: at + gap, width: wide, ...style });
    at += gap + wide;
    gap = 0;
  };
  const putInPieces = ({ text, style }: Part): void => {
    const part = (from: number, to: number): Part => {
      const cut = letters.slice(from, to).join('');
      return { text: cut, style, width: measure(cut, style.face, size) };
    };
    const letters = [...text];
    let from = 0;
    while (from < letters.length) {
      let to = letters.length;
      while (to > from + 1 && at + gap + part(from, to).width > most) to -= 1;
      if (at > 0 && at + gap + part(from, to).width > most) {
        endLine();
        continue;
      }
      put(part(from, to));
      from = to;
      if (from < letters.length) endLine();
    }
  };
  const endWord = (): void => {
    if (word.length === 0) return;
    const wide = word.reduce((sum, part) => sum + part.width, 0);
    if (at > 0 && at + gap + wide > most) endLine();
    for (const part of word) {
      if (wide <= most) put(part);
      else putInPieces(part);
    }
    word = [];
  };

  for (const run of runsOf(inline)) {
    const style: Style = { face: run.face ?? face, ink: run.ink ?? ink, goTo: run.goTo };
    for (const text of run.text.split(/(\n| +)/)) {
      if (text === '') continue;
      if (text === '\n') {
        endWord();
        endLine();
      } else if (text.startsWith(' ')) {
        endWord();
        if (at > 0) gap = measure(' ', style.face, size);
      } else word.push({ text, style, width: measure(text, style.face, size) });
    }
  }
  endWord();
  if (pieces.length > 0 || lines.length === 0) endLine();
  return lines;
}
