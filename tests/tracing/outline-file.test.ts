import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { decodeText } from '~/lib/case/imports/csv';
import {
  outlineFromFile,
  parseOutlineFile,
  uncertaintyOfFile,
  type OutlineFile,
} from '~/lib/tracing/outline-file';

const SEED = { seed: 4711 };

function parsed(text: string, shape?: 'wheel' | 'rail'): OutlineFile {
  const file = parseOutlineFile(text, { shape });
  if (!file.ok) throw new Error(file.message);
  return file.value;
}

function outline(file: OutlineFile, choice?: Parameters<typeof outlineFromFile>[1]) {
  const made = outlineFromFile(file, choice);
  if (!made.ok) throw new Error(made.message);
  return made.value;
}

const message = (result: { readonly ok: boolean; readonly message?: string }): string | undefined =>
  result.ok ? undefined : result.message;

/** Seven points of an invented wheel, x and y in mm. */
const POINTS: readonly (readonly [number, number])[] = [
  [0, -8.5],
  [0, 12.5],
  [14.25, 27.75],
  [30.5, 12],
  [44, 2.5],
  [70, 0],
  [135, -3.25],
];

const withComma = (value: number): string => String(value).replace('.', ',');

describe('outline file', () => {
  it.each([
    ['commas', POINTS.map(([x, y]) => `${x},${y}`)],
    ['commas and spaces', POINTS.map(([x, y]) => `${x}, ${y}`)],
    ['a comma at the end', POINTS.map(([x, y]) => `${x},${y},`)],
    ['semicolons, decimal commas', POINTS.map(([x, y]) => `${withComma(x)};${withComma(y)}`)],
    ['tabs, decimal commas', POINTS.map(([x, y]) => `${withComma(x)}\t${withComma(y)}`)],
    ['spaces, decimal commas', POINTS.map(([x, y]) => ` ${withComma(x)}   ${withComma(y)} `)],
    ['spaces', POINTS.map(([x, y]) => `   ${x.toFixed(3)}  ${y.toFixed(3)}`)],
    ['quotation marks', POINTS.map(([x, y]) => `"${x}","${y}"`)],
    ['quoted decimal commas', POINTS.map(([x, y]) => `"${withComma(x)}";"${withComma(y)}"`)],
    ['exponents', POINTS.map(([x, y]) => `${x.toExponential(6)} ${y.toExponential(6)}`)],
    ['a minus sign of a word processor', POINTS.map(([x, y]) => `${x},${y}`.replace('-', '−'))],
  ])('reads points separated by %s', (_, lines) => {
    const { xMm, yMm } = outline(parsed(lines.join('\n'), 'wheel'));
    expect(Array.from(xMm, (x, i) => [x, yMm[i]])).toEqual(POINTS);
  });

  it('finds x and y among other columns, by heading or by how far they reach', () => {
    const named = ['Nr;Y [mm];Z;X [mm]', ...POINTS.map(([x, y], i) => `${i + 1};${y};0;${x}`)].join('\r\n');
    expect(parsed(named).columns).toEqual([3, 1]);
    expect(parsed(named).headings).toEqual(['Nr', 'Y [mm]', 'Z', 'X [mm]']);
    const bare = POINTS.map(([x, y], i) => `${i + 1} ${y} 0 ${x}`).join('\n');
    expect(parsed(bare, 'wheel').columns).toEqual([3, 1]);
    expect([...outline(parsed(bare, 'wheel')).xMm]).toEqual(POINTS.map(([x]) => x));
  });

  it('leaves out comments, headings and a byte-order mark, and says which lines', () => {
    const text = ['\uFEFF# traced at the wheel', '', 'x,y', ...POINTS.map(String), '! end of trace'].join(
      '\n',
    );
    const file = parsed(text);
    expect(file.skippedLines.map(({ line, kind }) => [line, kind])).toEqual([
      [1, 'comment'],
      [3, 'heading'],
      [11, 'comment'],
    ]);
    expect(file.rows).toHaveLength(POINTS.length);
  });

  it('takes the unit from the text, else from the size, and lets it be changed', () => {
    const inches = POINTS.map(([x, y]) => `${x / 25.4}, ${y / 25.4}`).join('\n');
    expect(parsed(inches).unit).toBe('in');
    expect(parsed(inches).guesses.join(' ')).toContain(
      'taken for inches, because the outline is 5.31 across',
    );
    expect(outline(parsed(inches)).xMm.at(-1)).toBeCloseTo(135, 9);
    expect(parsed(`% units: mm\n${inches}`).unit).toBe('mm');
    expect(message(outlineFromFile(parsed(inches), { ...parsed(inches), unit: 'mm' }))).toContain(
      'Choose the other unit',
    );
    expect(parsed(POINTS.join('\n')).unit).toBe('mm');
  });

  it('turns a wheel that lies upside down or the other way round', () => {
    for (const [x, y] of [
      [1, 1],
      [-1, 1],
      [1, -1],
      [-1, -1],
    ] as const) {
      const text = POINTS.map(([px, py]) => `${x * px} ${y * py}`).join('\n');
      const file = parsed(text, 'wheel');
      expect(file.flipped).toEqual({ x: x < 0, y: y < 0 });
      const { xMm, yMm } = outline(file);
      expect(Array.from(xMm, (px, i) => [px, yMm[i]])).toEqual(POINTS);
    }
  });

  it('starts at the left whichever way the file runs', () => {
    const { xMm } = outline(parsed([...POINTS].reverse().join('\n'), 'wheel'));
    expect([...xMm]).toEqual(POINTS.map(([x]) => x));
  });

  it('names lines it cannot read, and refuses only when they are many', () => {
    const many = Array.from({ length: 60 }, (_, i) => `${i * 2} ${(i % 7) + 0.5}`);
    const spoilt = [...many.slice(0, 10), '12 ??', ...many.slice(10)].join('\n');
    expect(parsed(spoilt).skippedLines).toMatchObject([{ line: 11, kind: 'unreadable' }]);
    expect(outline(parsed(spoilt)).xMm).toHaveLength(60);
    const worse = [...many.slice(0, 10), ...Array.from({ length: 9 }, () => '12 ??'), ...many.slice(10)].join(
      '\n',
    );
    expect(message(outlineFromFile(parsed(worse)))).toContain('lines 11, 12, 13, 14, 15 and more');
  });

  it.each([
    ['', 'The file is empty'],
    ['\0\u0001', 'not a text file'],
    ['wheel\nrail\n', 'Only one column'],
    ['1\n2\n3\n4\n5\n6', 'Only one column'],
    ['1,2\n2,3', 'Only 2 lines with numbers'],
    ['3,3\n3,3\n3,3\n3,3\n3,3', 'No two columns'],
  ])('refuses %j and says what to choose instead', (text, said) => {
    expect(message(parseOutlineFile(text))).toContain(said);
  });

  it('refuses columns that are not there, or twice the same', () => {
    const file = parsed(POINTS.join('\n'));
    expect(message(outlineFromFile(file, { ...file, columns: [0, 2] }))).toContain('has 2 columns');
    expect(message(outlineFromFile(file, { ...file, columns: [1, 1] }))).toContain('same column');
  });

  it('gives the instrument and the places written as uncertainty', () => {
    const file = parsed(POINTS.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('\n'));
    expect(uncertaintyOfFile(file, 'mm').acrossMm).toBeCloseTo(Math.hypot(0.1, 0.05 / Math.sqrt(3)), 9);
    expect(uncertaintyOfFile(file, 'in', 0.5).acrossMm).toBeCloseTo(
      Math.hypot(0.5, (0.05 * 25.4) / Math.sqrt(3)),
      9,
    );
  });

  it('never throws, and what it accepts is finite', () => {
    const cell = fc.oneof(
      fc.double({ noDefaultInfinity: true, noNaN: true }).map(String),
      fc.integer({ min: -200, max: 200 }).map(String),
      fc.constantFrom('', '1,5', '"', 'x', 'y', '-', '1e400', 'mm', '#', '½'),
      fc.string({ maxLength: 6 }),
    );
    const text = fc
      .tuple(
        fc.array(fc.array(cell, { maxLength: 5 }), { maxLength: 25 }),
        fc.constantFrom(',', ';', '\t', ' ', ', '),
      )
      .map(([lines, by]) => lines.map((cells) => cells.join(by)).join('\n'));
    fc.assert(
      fc.property(
        fc.oneof(text, fc.string()),
        fc.constantFrom('wheel', 'rail', undefined),
        (given, shape) => {
          const file = parseOutlineFile(given, { shape });
          if (!file.ok) {
            expect(file.message).not.toBe('');
            return;
          }
          const made = outlineFromFile(file.value);
          if (!made.ok) {
            expect(made.message).not.toBe('');
            return;
          }
          expect([...made.value.xMm, ...made.value.yMm].every(Number.isFinite)).toBe(true);
        },
      ),
      { ...SEED, numRuns: 400 },
    );
  });
});

describe('sample outlines', () => {
  const sample = (name: string): string => {
    const text = decodeText(readFileSync(new URL(`../../fixtures/samples/${name}`, import.meta.url)));
    if (!text.ok) throw new Error(text.message);
    return text.value;
  };

  it.each([
    ['wheel-outline.csv', 'wheel', 'mm', 135],
    ['wheel-outline-inches.txt', 'wheel', 'in', 135],
    ['rail-outline.txt', 'rail', 'mm', 74],
  ] as const)('reads %s as it stands', (name, shape, unit, acrossMm) => {
    const file = parsed(sample(name), shape);
    expect(file.unit).toBe(unit);
    expect(file.skippedLines.filter(({ kind }) => kind === 'unreadable')).toEqual([]);
    const { xMm, yMm } = outline(file);
    expect(Math.max(...xMm) - Math.min(...xMm)).toBeCloseTo(acrossMm, 0);
    expect(Math.max(...yMm) - Math.min(...yMm)).toBeGreaterThan(20);
  });
});
