import { describe, expect, it } from 'vitest';
import { lookNext } from '~/lib/explanations/expected-information';
import { judgementTable, judgementValues } from '~/lib/explanations/judgement-table';
import { weigh } from '~/lib/explanations/weigh';
import type { WitnessRecord, WitnessState } from '~/lib/explanations/witness';
import { fact, notFound, question, SEEN, tables } from './small-tables';

const record = (witness: string, state: WitnessState): readonly [string, WitnessRecord] => [
  witness,
  { witness, state, refs: [], remarks: [] },
];

describe('what would help most', () => {
  const small = tables(
    [
      fact('flangeCrossedHead', [question('A', 0.8, 0.1), question('B', 0.6, 0.2)]),
      fact('wheelLight', [question('C', 0.55, 0.45)]),
    ],
    {
      wheelClimb: { flangeCrossedHead: 0.9, wheelLight: 0.8 },
      railRollover: { flangeCrossedHead: 0.2, wheelLight: 0.3 },
      somethingElse: { flangeCrossedHead: 0.1, wheelLight: 0.35 },
    },
  );
  const values = judgementValues(judgementTable(small));

  it('is the change that weighing with each outcome would bring, in expectation', () => {
    const records = new Map([record('A', SEEN)]);
    const states = new Map<string, WitnessState>([['A', SEEN]]);
    const before = weigh(small, states, values).total;
    const lead = (state: WitnessState): number => {
      const { total } = weigh(small, new Map([...states, ['B', state] as const]), values);
      return total.wheelClimb - total.railRollover - (before.wheelClimb - before.railRollover);
    };
    const [seen, not] = [lead(SEEN), lead(notFound(1))];
    // P(seen | H) times the ratio of the other is what it would be under the other: two equations.
    const [r, q] = [10 ** (seen / 10), 10 ** (not / 10)];
    const underRollover = (1 - q) / (r - q);
    const underClimb = r * underRollover;
    const mean = (underClimb + underRollover) / 2;
    const expected = mean * Math.abs(seen) + (1 - mean) * Math.abs(not);
    const item = lookNext(small, records, values, weigh(small, states, values)).find(
      ({ witness }) => witness === 'B',
    );
    expect(item?.betweenTopTwo).toBeCloseTo(expected, 9);
  });

  it('lists only what nobody looked for, the more telling first', () => {
    const none = lookNext(small, new Map(), values, weigh(small, new Map(), values));
    expect(none.map(({ witness }) => witness)).toEqual(['A', 'B', 'C']);
    const records = new Map([record('A', SEEN), record('B', { kind: 'couldNotTell', why: 'covered' })]);
    const rest = lookNext(small, records, values, weigh(small, new Map([['A', SEEN]]), values));
    expect(rest.map(({ witness }) => witness)).toEqual(['C']);
  });

  it('brings less once the fact is settled by others', () => {
    const at = (states: Map<string, WitnessState>): number =>
      lookNext(
        small,
        new Map([...states].map(([id, state]) => record(id, state))),
        values,
        weigh(small, states, values),
      ).find(({ witness }) => witness === 'B')?.most ?? 0;
    expect(at(new Map([['A', SEEN]]))).toBeLessThan(at(new Map()));
  });
});
