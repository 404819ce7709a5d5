import { describe, expect, it } from 'vitest';
import { judgementTable, judgementValues } from '~/lib/explanations/judgement-table';
import { decibans, likelihood } from '~/lib/explanations/weigh';
import { scaleWord } from '~/lib/explanations/words';
import { fact, notFound, question, SEEN, tables } from '../explanations/small-tables';

describe('the deciban', () => {
  // Good, Probability and the Weighing of Evidence (1950), from memory: a ban is a factor of ten, a deciban a tenth of it.
  it('ten of them make a factor of ten', () => {
    expect(decibans(10)).toBe(10);
    expect(decibans(100)).toBe(20);
    expect(decibans(1)).toBe(0);
  });

  // Good, A. M. Turing’s statistical work in World War II, Biometrika 66 (1979), from memory:
  // a deciban is a change of odds from evens to about 5:4.
  it('one of them takes even odds to about 5:4', () => {
    expect(decibans(5 / 4)).toBeCloseTo(1, 1);
  });

  // General Report on Tunny (1945), sect. 21, p. 39: a penny tossed 20 times, each time heads. Each toss
  // is a factor of 2, "i.e. 3 decibans", 60 in all; prior odds 1/10⁴ are 40 down; posterior 20 d.b., 100:1 on.
  it('adds up over the twenty tosses of the penny in the report on Tunny', () => {
    const [heads, tails] = likelihood(
      question('double-headed', 0.999, 0.4995),
      SEEN,
      judgementValues(
        judgementTable(
          tables([fact('wheelLight', [question('double-headed', 0.999, 0.4995)])], { somethingElse: {} }),
        ),
      ),
    );
    const perToss = decibans(heads / tails);
    expect(Math.round(perToss)).toBe(3);
    expect(20 * Math.round(perToss)).toBe(60);
    const posterior = 20 * perToss + decibans(1 / 10_000);
    expect(Math.round(posterior)).toBe(20);
    expect(10 ** (posterior / 10)).toBeGreaterThan(100);
    expect(10 ** (posterior / 10)).toBeLessThan(110);
  });
});

describe('the likelihood ratio of something looked for', () => {
  // Published screening table, PubMed Central PMC4910190, table 4: sensitivity, specificity, LR+, LR−.
  // A test that is positive is "seen"; one that is negative is "not found" with everything examined.
  const rows = [
    [0.9348, 0.2821, 1.3, 0.23],
    [0.8696, 0.5278, 1.84, 0.25],
    [0.6522, 0.7265, 2.38, 0.48],
    [0.4565, 0.8782, 3.75, 0.62],
    [0.2826, 0.9487, 5.51, 0.76],
    [0.2391, 0.9786, 11.19, 0.78],
    [0.1304, 0.9915, 15.26, 0.88],
  ] as const;

  it.each(rows)(
    'sensitivity %d, specificity %d: LR+ %d, LR− %d',
    (sensitivity, specificity, positive, negative) => {
      const witness = question('test', sensitivity, 1 - specificity);
      const values = judgementValues(
        judgementTable(tables([fact('wheelLight', [witness])], { somethingElse: {} })),
      );
      const ratio = ([ifTrue, ifFalse]: readonly [number, number]): number => ifTrue / ifFalse;
      // The table is rounded to four and two figures: a last figure either way.
      expect(ratio(likelihood(witness, SEEN, values)) / positive).toBeCloseTo(1, 1.9);
      expect(ratio(likelihood(witness, notFound(1), values))).toBeCloseTo(negative, 1.9);
    },
  );

  // Eddy, Probabilistic reasoning in clinical medicine (1982), from memory: 1 in 100 have it, the test finds
  // 79.2 % of those and 9.6 % of the others; a positive test leaves about 7.7 %.
  it('takes a prior of one in a hundred to about 7.7 in a hundred', () => {
    const odds = 10 ** ((decibans(0.01 / 0.99) + decibans(0.792 / 0.096)) / 10);
    expect(odds / (1 + odds)).toBeCloseTo(0.077, 3);
  });
});

describe('the verbal scale', () => {
  // ENFSI Guideline for Evaluative Reporting in Forensic Science (2015), from memory.
  it.each([
    [1, 'none'],
    [1.9, 'none'],
    [2, 'weak'],
    [9.9, 'weak'],
    [10, 'moderate'],
    [99, 'moderate'],
    [100, 'moderatelyStrong'],
    [999, 'moderatelyStrong'],
    [1_000, 'strong'],
    [9_999, 'strong'],
    [10_000, 'veryStrong'],
  ] as const)('a ratio of %d is %s', (ratio, word) => {
    expect(scaleWord(ratio)).toBe(word);
  });
});
