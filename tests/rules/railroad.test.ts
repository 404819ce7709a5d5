import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkLimit, limitsFor } from '../../lib/rules/apply';
import { highestClassMet } from '../../lib/rules/class-met';
import { parseRailroadLimits } from '../../lib/rules/railroad';

const good = {
  name: 'Own track limits',
  document: 'Engineering instructions, section 4, edition of 2024 (invented)',
  basedOn: 'us-49cfr213',
  whereSilent: 'nothing',
  limits: [
    {
      quantity: 'gauge',
      sense: 'max',
      atLimit: 'condemned',
      amount: { '1': `4' 9 3/4"`, '2': '57 1/2 in', '3': '1457 mm', '4': null, '5': null },
      item: '4.2',
    },
    { quantity: 'tiesPer39ft', sense: 'min', atLimit: 'allowed', amount: 14 },
  ],
};

const parsed = (input: unknown) => {
  const result = parseRailroadLimits(input);
  if (!result.ok) throw new Error(result.message);
  return result.value;
};
const refusal = (input: unknown): string => {
  const result = parseRailroadLimits(input);
  return result.ok ? 'accepted' : result.message;
};
const withLimit = (change: object) => ({ ...good, limits: [{ ...good.limits[0], ...change }] });

describe('the railroad’s own limits', () => {
  it('take what holds two deviations together from the base set only where they are to be filled from it', () => {
    expect(parsed(good).combined).toBeUndefined();
    expect(parsed({ ...good, whereSilent: 'base' }).combined?.map(({ id }) => id)).toEqual([
      'combined62',
      'combined31',
    ]);
  });

  it('become a rule set, from text or object, amounts kept as printed', () => {
    const set = parsed(JSON.stringify(good));
    expect(set).toEqual(parsed(good));
    expect(set.id).toBe('railroad-own-track-limits');
    expect(set.kind).toBe('track');
    const [gauge] = limitsFor(set, '2', 'gauge', { onCurve: false });
    expect(gauge).toMatchObject({ value: 57.5 * 25.4, printed: '57 1/2 in' });
    expect(gauge?.limit.citation).toContain('4.2');
    expect(checkLimit({ value: 57.5 * 25.4, u: 0, limit: gauge! }).exceeded).toBe(true);
    expect(limitsFor(set, '5', 'gauge', { onCurve: false })).toEqual([]);
    expect(limitsFor(set, '4', 'tiesPer39ft', { onCurve: false })[0]?.value).toBe(14);
  });

  it('are used like any other set', () => {
    const set = parsed(good);
    const at = (mm: number) =>
      highestClassMet(set, [{ quantity: 'gauge', value: mm, u: 0 }], { onCurve: true });
    expect(at(1460).highest).toBe('2');
    expect(at(1470).highest).toBeNull();
  });

  it('can limit what the public rules leave to the railroad, such as back-to-back of freight cars', () => {
    const set = parsed({
      ...good,
      name: 'Own wheel limits',
      basedOn: 'us-49cfr215-229-230',
      limits: [
        { quantity: 'backToBack', sense: 'min', atLimit: 'allowed', amount: { freightCar: '52 15/16"' } },
      ],
    });
    expect(limitsFor(set, 'freightCar', 'backToBack', { onCurve: false })[0]?.value).toBeCloseTo(
      52.9375 * 25.4,
      9,
    );
  });

  it.each([
    ['text that is not JSON', '{', 'not valid JSON'],
    ['nothing', null, ''],
    ['no name', { ...good, name: ' ' }, 'Enter a name'],
    ['no document', { ...good, document: undefined }, 'title and edition'],
    ['an unknown base', { ...good, basedOn: 'elsewhere' }, 'Choose one of: us-49cfr213'],
    ['no limits', { ...good, limits: [] }, 'at least one limit'],
    ['an unknown quantity', withLimit({ quantity: 'comfort' }), 'Choose what is limited'],
    ['a wheel quantity in a track set', withLimit({ quantity: 'rimThickness' }), 'does not belong'],
    ['a length without unit', withLimit({ amount: 57.5 }), 'write the unit'],
    ['a length without unit, as text', withLimit({ amount: '57 1/2' }), 'write the unit'],
    ['a negative length', withLimit({ amount: '-57 in' }), 'not negative'],
    ['a zero denominator', withLimit({ amount: '1/0 in' }), 'zero below the line'],
    ['a class that does not exist', withLimit({ amount: { '7': '57 in' } }), 'there is no class “7”'],
    ['no amount at all', withLimit({ amount: { '1': null } }), 'at least one class'],
    [
      'a count that is not whole',
      withLimit({ quantity: 'tiesPer39ft', sense: 'min', amount: 8.5 }),
      'whole number',
    ],
    ['a faster class allowed more', withLimit({ amount: { '1': '57 in', '2': '58 in' } }), 'faster class'],
    ['an unknown field', { ...good, colour: 'red' }, ''],
  ])('refuse %s with a message', (_what, input, says) => {
    const message = refusal(input);
    expect(message).not.toBe('accepted');
    expect(message.length).toBeGreaterThan(10);
    expect(message).toContain(says);
  });

  it('never throw', () => {
    fc.assert(
      fc.property(fc.oneof(fc.anything(), fc.json(), fc.string()), (input) => {
        expect(typeof parseRailroadLimits(input).ok).toBe('boolean');
      }),
      { seed: 5, numRuns: 300 },
    );
    fc.assert(
      fc.property(fc.string(), (amount) => {
        expect(typeof parseRailroadLimits(withLimit({ amount })).ok).toBe('boolean');
      }),
      { seed: 6, numRuns: 300 },
    );
  });
});
