import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgementTable, judgementValues, TABLES } from '~/lib/explanations/judgement-table';
import { likelihood, weigh, type States } from '~/lib/explanations/weigh';
import type { WitnessState } from '~/lib/explanations/witness';
import { fact, notFound, question, SEEN, tables } from './small-tables';

const probability = fc.double({ min: 0.001, max: 0.999, noNaN: true });

describe('weighing by hand', () => {
  /*
   * One fact, expected 0.9 by a climb, 0.2 by a rollover, 0.1 by the background.
   * Witness A (0.8 if so, 0.1 if not) seen; witness B (0.6, 0.2) not found with half examined:
   * 1 − 0.5·0.6 = 0.7 and 1 − 0.5·0.2 = 0.9.
   * Λ = (0.8·0.7, 0.1·0.9) = (0.56, 0.09).
   * L(climb) = 0.9·0.56 + 0.1·0.09 = 0.513; L(rollover) = 0.2·0.56 + 0.8·0.09 = 0.184;
   * L(0) = 0.1·0.56 + 0.9·0.09 = 0.137.
   * L′(climb) = 0.95·0.513 + 0.05·0.137 = 0.4942; L′(rollover) = 0.95·0.184 + 0.05·0.137 = 0.18165.
   * Against the background: 10·log10(0.4942/0.137) = 5.572; 10·log10(0.18165/0.137) = 1.225.
   * Climb over rollover: 10·log10(0.4942/0.18165) = 4.347.
   */
  const small = tables([fact('flangeCrossedHead', [question('A', 0.8, 0.1), question('B', 0.6, 0.2)])], {
    wheelClimb: { flangeCrossedHead: 0.9 },
    railRollover: { flangeCrossedHead: 0.2 },
    somethingElse: { flangeCrossedHead: 0.1 },
  });
  const values = judgementValues(judgementTable(small));
  const states: States = new Map<string, WitnessState>([
    ['A', SEEN],
    ['B', notFound(0.5)],
  ]);

  it('gives the worked numbers', () => {
    const { total } = weigh(small, states, values);
    expect(total.wheelClimb).toBeCloseTo(5.572, 3);
    expect(total.railRollover).toBeCloseTo(1.225, 3);
    expect(total.somethingElse).toBe(0);
    expect(total.wheelClimb - total.railRollover).toBeCloseTo(4.347, 3);
  });

  it('adds the weights of separate facts', () => {
    const expectations = {
      wheelClimb: { flangeCrossedHead: 0.9, wheelLight: 0.9 },
      somethingElse: { flangeCrossedHead: 0.1, wheelLight: 0.1 },
    };
    const two = tables(
      [
        fact('flangeCrossedHead', [question('A', 0.8, 0.1), question('B', 0.6, 0.2)]),
        fact('wheelLight', [question('C', 0.8, 0.1), question('D', 0.6, 0.2)]),
      ],
      expectations,
    );
    const both = new Map([...states, ['C', SEEN] as const, ['D', notFound(0.5)] as const]);
    const { total } = weigh(two, both, judgementValues(judgementTable(two)));
    expect(total.wheelClimb).toBeCloseTo(2 * 5.5718, 3);
  });
});

describe('the weight of one fact', () => {
  const arbitrary = fc.record({
    own: probability,
    background: probability,
    witnesses: fc.array(
      fc.record({
        ifTrue: probability,
        ifFalse: probability,
        examined: fc.option(fc.double({ min: 0, max: 1, noNaN: true })),
      }),
      { minLength: 1, maxLength: 12 },
    ),
  });

  it('never exceeds how differently the explanations expect it, whatever is read and how often', () => {
    fc.assert(
      fc.property(arbitrary, ({ own, background, witnesses }) => {
        const small = tables(
          [
            fact(
              'wheelLight',
              witnesses.map(({ ifTrue, ifFalse }, i) => question(`w${i}`, ifTrue, ifFalse)),
            ),
          ],
          { wheelClimb: { wheelLight: own }, somethingElse: { wheelLight: background } },
        );
        const states = new Map(
          witnesses.map(
            ({ examined }, i) => [`w${i}`, examined === null ? SEEN : notFound(examined)] as const,
          ),
        );
        const { total } = weigh(small, states, judgementValues(judgementTable(small)));
        const given = 0.95 * own + 0.05 * background;
        const bounds = [given / background, (1 - given) / (1 - background)].map((r) => 10 * Math.log10(r));
        expect(total.wheelClimb).toBeGreaterThanOrEqual(Math.min(...bounds) - 1e-9);
        expect(total.wheelClimb).toBeLessThanOrEqual(Math.max(...bounds) + 1e-9);
      }),
      { seed: 11, numRuns: 300 },
    );
  });

  it('does not depend on the order in which witnesses come', () => {
    fc.assert(
      fc.property(arbitrary, fc.integer(), ({ own, background, witnesses }, turn) => {
        const all = witnesses.map(({ ifTrue, ifFalse }, i) => question(`w${i}`, ifTrue, ifFalse));
        const cut = Math.abs(turn) % all.length;
        const turned = [...all.slice(cut), ...all.slice(0, cut)].reverse();
        const states = new Map(
          witnesses.map(
            ({ examined }, i) => [`w${i}`, examined === null ? SEEN : notFound(examined)] as const,
          ),
        );
        const totalOf = (order: typeof all): number => {
          const small = tables([fact('wheelLight', order)], {
            wheelClimb: { wheelLight: own },
            somethingElse: { wheelLight: background },
          });
          return weigh(small, states, judgementValues(judgementTable(small))).total.wheelClimb;
        };
        expect(totalOf(turned)).toBe(totalOf(all));
      }),
      { seed: 12, numRuns: 200 },
    );
  });
});

describe('the states of something looked for', () => {
  const witness = question('A', 0.8, 0.1);
  const small = tables([fact('wheelLight', [witness])], { somethingElse: {} });
  const values = judgementValues(judgementTable(small));
  const ratio = (state: WitnessState | undefined): number => {
    const [ifTrue, ifFalse] = likelihood(witness, state, values);
    return ifTrue / ifFalse;
  };

  it('seen speaks for, not found against, could not tell and not looked for say nothing', () => {
    expect(ratio(SEEN)).toBeCloseTo(8, 12);
    expect(ratio(notFound(1))).toBeCloseTo(0.2 / 0.9, 12);
    expect(ratio({ kind: 'couldNotTell', why: 'covered' })).toBe(1);
    expect(ratio({ kind: 'notLooked' })).toBe(1);
    expect(ratio(undefined)).toBe(1);
  });

  it('not found speaks the more against the more was examined, and not at all for nothing examined', () => {
    expect(ratio(notFound(0))).toBe(1);
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (a, b) => {
          const [less, more] = a < b ? [a, b] : [b, a];
          expect(ratio(notFound(more))).toBeLessThanOrEqual(ratio(notFound(less)));
        },
      ),
      { seed: 13, numRuns: 100 },
    );
  });

  it('takes half where the share examined was not said', () => {
    expect(ratio({ kind: 'notFound', examined: 0, examinedSaid: false })).toBeCloseTo(
      ratio(notFound(0.5)),
      12,
    );
  });

  it('reads the worst of many as less telling than one of one', () => {
    const worst = ratio({ kind: 'seen', worstOfMany: true });
    // 1 − 0.2⁵ = 0.99968 against 1 − 0.9⁵ = 0.40951
    expect(worst).toBeCloseTo(0.99968 / 0.40951, 6);
    expect(worst).toBeLessThan(ratio(SEEN));
    expect(worst).toBeGreaterThan(1);
  });
});

it('weighs the whole table in well under 20 ms', () => {
  const values = judgementValues(judgementTable());
  const states = new Map(
    TABLES.facts.flatMap(({ witnesses }) => witnesses.map(({ id }) => [id, SEEN] as const)),
  );
  weigh(TABLES, states, values);
  const began = performance.now();
  for (let i = 0; i < 50; i += 1) weigh(TABLES, states, values);
  expect((performance.now() - began) / 50).toBeLessThan(20);
});
