import { describe, expect, it } from 'vitest';
import type { Changed, WhatWouldChange } from '~/lib/explanations/argument';
import { verdictOf } from '~/lib/explanations/verdict';

const standing = (lead: number) => ({ leader: 'wheelClimb', next: 'railRollover', lead }) as const;

const change = (staysAhead: number, readingsLeftOut: readonly Changed[] = []): WhatWouldChange => ({
  deciding: [],
  witnessesLeftOut: [],
  readingsLeftOut,
  factsFlipped: [],
  widened: { draws: 400, staysAhead, lead: [8, 12, 16] },
});

const withoutOne = (changesLeader: boolean): Changed => ({
  kind: 'readingLeftOut',
  id: 'r1',
  what: 'Gauge-face angle: 64',
  leader: changesLeader ? 'railRollover' : 'wheelClimb',
  lead: 3,
  changesLeader,
  fallsBelow: !changesLeader,
  refs: [],
});

const because = (...given: Parameters<typeof verdictOf>): readonly string[] => {
  const verdict = verdictOf(...given);
  return verdict.kind === 'notDistinguishable' ? verdict.because : [];
};

describe('distinguishable', () => {
  it('is said when all three conditions are met', () => {
    expect(verdictOf(standing(10), true, change(0.9)).kind).toBe('distinguishable');
    expect(verdictOf(standing(10), true, change(0.9, [withoutOne(false)])).kind).toBe('distinguishable');
  });

  it('is not said below 10 decibans', () => {
    expect(because(standing(9.9), true, change(1))).toEqual([
      expect.stringContaining('only 9.9 decibans apart'),
    ]);
  });

  it('is not said when fewer than nine of ten draws keep the order', () => {
    expect(because(standing(12), true, change(0.89))).toEqual([expect.stringContaining('89 of 100 draws')]);
  });

  it('is not said when one reading reverses it, and that reading is named', () => {
    expect(because(standing(12), true, change(1, [withoutOne(true)]))).toEqual([
      expect.stringContaining('Gauge-face angle: 64'),
    ]);
  });

  it('is never said of nothing', () => {
    expect(verdictOf(standing(0), false, change(0)).kind).toBe('notMeasured');
  });
});
