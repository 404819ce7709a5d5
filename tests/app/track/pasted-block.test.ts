import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pastedBlock } from '~/app/track/pasted-block';

/** As a spreadsheet puts a block on the clipboard. */
const copied = (rows: readonly (readonly string[])[], lineEnd: string): string =>
  rows
    .map((row) =>
      row.map((cell) => (/[\t\n"]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell)).join('\t'),
    )
    .map((line) => line + lineEnd)
    .join('');

const cell = fc.string({
  unit: fc.constantFrom('a', '5', ' ', '/', '"', '\t', '\n', '.', '-', 'é'),
  maxLength: 8,
});

const block = fc
  .integer({ min: 1, max: 5 })
  .chain((width) =>
    fc.array(fc.array(cell, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 6 }),
  );

describe('a block copied from a spreadsheet', () => {
  it('comes back cell by cell', () => {
    fc.assert(
      fc.property(block, fc.constantFrom('\n', '\r\n'), (rows, lineEnd) => {
        expect(pastedBlock(copied(rows, lineEnd))).toEqual(rows);
      }),
      { seed: 20260506, numRuns: 300 },
    );
  });

  it('keeps inch marks, which are no quotation marks', () => {
    expect(pastedBlock(`56 3/4"\t2"\r\n4' 8 1/2"\t\r\n`)).toEqual([
      ['56 3/4"', '2"'],
      [`4' 8 1/2"`, ''],
    ]);
  });

  it('reads a column without tabs, and one cell', () => {
    expect(pastedBlock('56\n57\n\n58')).toEqual([['56'], ['57'], [''], ['58']]);
    expect(pastedBlock('56 1/2')).toEqual([['56 1/2']]);
    expect(pastedBlock('')).toEqual([['']]);
  });

  it('never throws and keeps every character that is no separator', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom('"', '\t', '\n', '\r', 'x', '1') }), (text) => {
        const plain = pastedBlock(text.replaceAll('"', '')).flat().join('');
        expect(plain).toBe(text.replace(/["\t\n\r]/g, ''));
        expect(pastedBlock(text).length).toBeGreaterThan(0);
      }),
      { seed: 20260507, numRuns: 300 },
    );
  });
});
