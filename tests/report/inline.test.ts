import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { breakLines, plainText } from '~/lib/report/type/inline';
import type { Measure } from '~/lib/report/type/faces';

/** Every letter as wide as half its size: widths can be reckoned by hand. */
const even: Measure = (text, _face, size) => [...text].length * size * 0.5;
const SIZE = 10;

const shown = (text: string, width: number): readonly string[] =>
  breakLines(text, width, { size: SIZE }, even).map(({ pieces }) =>
    pieces.map((piece) => piece.text).join(' '),
  );

describe('breaking text into lines', () => {
  it('breaks at spaces', () => {
    expect(shown('one two three', 40)).toEqual(['one two', 'three']);
  });

  it('breaks a word that is wider than the line between letters', () => {
    expect(shown('ab 0123456789', 25)).toEqual(['ab', '01234', '56789']);
  });

  it('keeps together what stands together, whatever its style', () => {
    const lines = breakLines(
      [{ text: 'see [' }, { text: 'R12', goTo: 'R12' }, { text: ']. End' }],
      35,
      { size: SIZE },
      even,
    );
    expect(lines.map(({ pieces }) => pieces.map((piece) => piece.text).join(''))).toEqual([
      'see',
      '[R12].',
      'End',
    ]);
  });

  it('ends a line where the text says so, and keeps words together that are joined', () => {
    expect(shown('a\nb', 100)).toEqual(['a', 'b']);
    expect(shown('x 56\u00a01/2', 30)).toEqual(['x', '56\u00a01/2']);
  });

  it('never draws beyond the width and never loses a letter', () => {
    const word = fc.stringMatching(/^[a-z0-9]{1,24}$/);
    fc.assert(
      fc.property(
        fc.array(word, { minLength: 1, maxLength: 40 }),
        fc.integer({ min: 10, max: 300 }),
        (words, width) => {
          const runs = words.map((text, i) => ({
            text: `${text} `,
            face: i % 3 === 0 ? ('bold' as const) : ('body' as const),
          }));
          const lines = breakLines(runs, width, { size: SIZE }, even);
          for (const line of lines) {
            expect(line.width).toBeLessThanOrEqual(width + 0.01);
            const last = line.pieces.at(-1);
            if (last) expect(last.x + last.width).toBeCloseTo(line.width, 6);
          }
          const letters = lines.flatMap(({ pieces }) => pieces.map((piece) => piece.text)).join('');
          expect(letters.replaceAll(' ', '')).toBe(plainText(runs).replaceAll(' ', ''));
        },
      ),
      { seed: 11, numRuns: 200 },
    );
  });

  it('gives empty text one empty line', () => {
    expect(breakLines('', 100, { size: SIZE }, even)).toEqual([{ pieces: [], width: 0 }]);
  });
});
