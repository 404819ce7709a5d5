import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseCount, parseGoNoGo, parseReading } from '~/lib/readings/parse';
import type { Choice, Count, GoNoGo, Observation, Quantity } from '~/lib/readings/quantity';
import { gauge } from './measures';

const shared = { short: '', subject: 'station', slots: [] } as const;
const ties: Count = { ...shared, kind: 'count', id: 'ties', name: 'Good ties', possible: [0, 30] };
const fit: GoNoGo = { ...shared, kind: 'goNoGo', id: 'fit', name: 'Flange check', check: 'thin flange' };
const position: Choice = {
  ...shared,
  kind: 'choice',
  id: 'position',
  name: 'Point position',
  choices: [
    { id: 'normal', label: 'Lined normal' },
    { id: 'reverse', label: 'Lined for the diverging route' },
  ],
};
const mark: Observation = {
  ...shared,
  kind: 'observation',
  id: 'mark',
  name: 'Flange mark on the head',
  question: 'Is there one?',
};

const message = (result: ReturnType<typeof parseReading>): string => (result.ok ? '' : result.message);

describe('a count', () => {
  it.each([
    ['0', 0],
    ['12', 12],
    [' 30 ', 30],
  ])('%s', (text, count) => {
    expect(parseCount(text, ties)).toEqual({ ok: true, value: count });
  });
  it.each(['', '-1', '1.5', '1/2', '31', 'twelve', '1,000', '12 ties'])('refuses %s', (text) => {
    expect(message(parseReading(text, ties, 'us'))).toMatch(/Good ties/);
  });
});

describe('a go/no-go gauge', () => {
  it.each(['pass', 'Pass', 'GO', 'ok', ' passed '])('%s passes', (text) => {
    expect(parseGoNoGo(text, fit)).toEqual({ ok: true, value: 'pass' });
  });
  it.each(['fail', 'no-go', 'No Go', 'nogo', 'NOT OK'])('%s fails', (text) => {
    expect(parseGoNoGo(text, fit)).toEqual({ ok: true, value: 'fail' });
  });
  it('never takes a number', () => {
    expect(message(parseReading('7/8', fit, 'us'))).toMatch(/not a number/);
  });
  it.each(['', 'maybe', 'yes'])('refuses "%s"', (text) => {
    expect(message(parseReading(text, fit, 'us'))).toMatch(/pass or fail/);
  });
});

describe('a choice', () => {
  it('is read by id and by label', () => {
    const read = {
      ok: true,
      value: { value: null, state: 'reverse', unit: '', resolution: null, question: null },
    };
    expect(parseReading('reverse', position, 'us')).toEqual(read);
    expect(parseReading('lined for the  Diverging route', position, 'us')).toEqual(read);
  });
  it('names the choices when refused', () => {
    expect(message(parseReading('half way', position, 'us'))).toMatch(
      /Lined normal, Lined for the diverging/,
    );
  });
});

describe('an observation', () => {
  it.each([
    ['seen', 'seen'],
    ['Looked for and not found', 'notFound'],
    ['notFound', 'notFound'],
    ['could not tell', 'couldNotTell'],
  ])('%s', (text, state) => {
    const parsed = parseReading(text, mark, 'us');
    expect(parsed.ok && parsed.value.state).toBe(state);
  });
  it('does not take a plain yes or no', () => {
    expect(message(parseReading('no', mark, 'us'))).toMatch(/looked for and not found, or could not tell/);
  });
  it('never stores that nobody looked', () => {
    expect(message(parseReading('Not looked for', mark, 'us'))).toMatch(/leave the line empty/);
  });
});

describe('any quantity', () => {
  it('gives exactly one of value and state, or a message, and never throws', () => {
    const quantities: readonly Quantity[] = [gauge, ties, fit, position, mark];
    const words = fc.constantFrom('pass', 'go', '12', '56 1/2', 'seen', 'normal', 'notLooked', '');
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ unit: 'grapheme' }), words),
        fc.constantFrom(...quantities),
        fc.constantFrom('us' as const, 'metric' as const),
        (text, quantity, system) => {
          const parsed = parseReading(text, quantity, system);
          if (!parsed.ok) return parsed.message.length > 10;
          return (parsed.value.value === null) !== (parsed.value.state === null);
        },
      ),
      { seed: 7, numRuns: 1000 },
    );
  });
});
