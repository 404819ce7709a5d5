import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeText, readCsv } from '~/lib/case/imports/csv';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

describe('bytes to text', () => {
  it('takes UTF-8 with and without a byte-order mark, and UTF-16 with one', () => {
    const text = 'Pos,Mark\n1,ÅBC';
    expect(decodeText(bytes(text))).toEqual({ ok: true, value: text });
    expect(decodeText(bytes(`\uFEFF${text}`))).toEqual({ ok: true, value: text });
    const wide = new Uint8Array(Buffer.from(`\uFEFF${text}`, 'utf16le'));
    expect(decodeText(wide)).toEqual({ ok: true, value: text });
  });

  it('refuses another code page instead of guessing at it', () => {
    const latin1 = new Uint8Array(Buffer.from('Pos,Mark\n1,ÅBC', 'latin1'));
    expect(decodeText(latin1)).toMatchObject({ ok: false, message: expect.stringContaining('UTF-8') });
  });
});

describe('text to cells', () => {
  it.each([
    ['commas', 'a,b\n1,2\n', ','],
    ['semicolons', 'a;b\n1;2\n', ';'],
    ['tabs', 'a\tb\n1\t2\n', '\t'],
    ['CR LF', 'a,b\r\n1,2\r\n', ','],
    ['blank lines', 'a,b\n\n1,2\n\n', ','],
  ])('reads %s', (_, text, delimiter) => {
    expect(readCsv(text)).toEqual({ ok: true, value: { header: ['a', 'b'], rows: [['1', '2']], delimiter } });
  });

  it('keeps separators, quotation marks and line ends inside quoted cells', () => {
    const sheet = readCsv('a,b\n"1, or ""one""","two\nlines"\n');
    expect(sheet).toMatchObject({ ok: true, value: { rows: [['1, or "one"', 'two\nlines']] } });
  });

  it.each([
    ['nothing', '', 'empty'],
    ['a header alone', 'a,b\n', 'nothing below it'],
    ['one column', 'a\n1\n', 'one column'],
    ['an open quotation mark', 'a,b\n"1,2\n', 'not closed'],
    ['a short row', 'a,b\n1,2\n3\n', 'Row 3 has 1 columns'],
    ['a long row', 'a,b\n1,2,3\n', 'Row 2 has 3 columns'],
    ['two columns of one name', 'a,a\n1,2\n', 'Two columns'],
    ['a spreadsheet file', 'PK\u0003\u0004\0\0', 'not a CSV'],
  ])('refuses %s and says what to do', (_, text, part) => {
    expect(readCsv(text)).toMatchObject({ ok: false, message: expect.stringContaining(part) });
  });

  it('never throws, and what it reads is rectangular', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const sheet = readCsv(text);
        if (!sheet.ok) expect(sheet.message).not.toBe('');
        else for (const row of sheet.value.rows) expect(row.length).toBe(sheet.value.header.length);
      }),
      { seed: 11, numRuns: 300 },
    );
  });
});
