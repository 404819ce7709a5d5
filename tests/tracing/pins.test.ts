import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outlineFromPins, readPins, uncertaintyOfPins } from '~/lib/tracing/pins';

const message = (entered: string, unit: 'mm' | 'in' = 'in'): string => {
  const pins = readPins(entered, { unit });
  return pins.ok ? '' : pins.message;
};

function offsets(entered: string, unit: 'mm' | 'in' = 'in'): readonly (number | null)[] {
  const pins = readPins(entered, { unit });
  if (!pins.ok) throw new Error(pins.message);
  return pins.value.offsetsMm;
}

describe('pin offsets', () => {
  const inches = [1, 1.1875, 0, -0.25, 2.5].map((value) => value * 25.4);

  it.each([
    ['a line each', '1\n1 3/16\n0\n-1/4\n2 1/2"'],
    ['semicolons', '1; 1 3/16; 0; -1/4; 2.5'],
    ['tabs', '1\t1 3/16\t0\t-1/4\t2.5'],
    ['commas', '1, 1 3/16, 0, -1/4, 2.5'],
    ['spaces', '1 1-3/16 0 -1/4 2.5'],
    ['carriage returns and blank ends', '\n1\r\n1-3/16\r\n0\r\n-1/4\r\n2½\r\n\r\n'],
    ['their own units', '25.4 mm\n1 3/16 in\n0\n-1/4"\n63.5mm'],
  ])('are read from %s', (_, entered) => {
    offsets(entered).forEach((mm, i) => expect(mm).toBeCloseTo(inches[i]!, 9));
  });

  it('stand at the pitch, with gaps left out', () => {
    const made = outlineFromPins('10 12.5 - -3 4 5 6', { unit: 'mm', pitchMm: 2 });
    if (!made.ok) throw new Error(made.message);
    expect([...made.value.xMm]).toEqual([0, 2, 6, 8, 10, 12]);
    expect([...made.value.yMm]).toEqual([10, 12.5, -3, 4, 5, 6]);
  });

  it.each([
    ['', 'No offsets are entered'],
    ['1 3/16 2', 'could be one pin or two'],
    ['12,5', 'could be decimals or a list'],
    ['1, 2,3', 'not clear which stand between pins'],
    ['1\n2\n\n4', 'Pin 3 is empty'],
    ['1\n2\nabc', 'Pin 3: '],
    ['1\n2\n3/17', 'Pin 3: “3/17”: no ruler is divided in 17 parts'],
    ['1\n40', 'Pin 2: “40” is 1000 mm, longer than any pin'],
    ['1\n4\' 2"', 'Pin 2: '],
    ['12 in 13 in', 'stands apart from its number'],
  ])('refuse %j, naming the pin', (entered, said) => {
    expect(message(entered)).toContain(said);
  });

  it('refuse a fraction without unit among millimetres', () => {
    expect(message('1\n3/16', 'mm')).toContain('Enter 3/16 in for inches');
  });

  it.each([
    ['1 2 3 - -', 2, 'Only 3 pins were read'],
    ['1 2 3 4 5', 0, 'from pin to pin must be between'],
    ['1 2 3 4 5', NaN, 'from pin to pin must be between'],
  ])('make no outline of %j at %d mm', (entered, pitchMm, said) => {
    const made = outlineFromPins(entered, { unit: 'mm', pitchMm });
    expect(made.ok ? '' : made.message).toContain(said);
  });

  it('say what a gauge and its division leave open', () => {
    const pins = readPins('1 3/16\n1 1/4\n2.125\n2.25\n2', { unit: 'in' });
    if (!pins.ok) throw new Error(pins.message);
    const { acrossMm, because } = uncertaintyOfPins(pins.value);
    expect(acrossMm).toBeCloseTo(Math.hypot(25.4 / 16, 25.4 / 8) / Math.sqrt(3), 9);
    expect(because.join(' ')).toContain('common practice, no source');
  });

  it('never throw', () => {
    const piece = fc.oneof(
      fc.string({ maxLength: 5 }),
      fc.constantFrom('1 3/16', '-', ',', '\n', ';', '12', ' ', '½', '"', '1e9'),
    );
    const text = fc.array(piece, { maxLength: 20 }).map((pieces) => pieces.join(''));
    fc.assert(
      fc.property(
        text,
        fc.constantFrom('mm' as const, 'in' as const),
        fc.double(),
        (entered, unit, pitchMm) => {
          const made = outlineFromPins(entered, { unit, pitchMm });
          if (made.ok) expect([...made.value.xMm, ...made.value.yMm].every(Number.isFinite)).toBe(true);
          else expect(made.message).not.toBe('');
        },
      ),
      { seed: 4712, numRuns: 500 },
    );
  });
});
