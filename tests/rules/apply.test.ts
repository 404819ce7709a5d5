import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkLimit, isSurelyWithin, limitsFor, type ClassLimit } from '../../lib/rules/apply';
import { RULE_SETS } from '../../lib/rules/index';
import type { RuleQuantityId } from '../../lib/rules/rule-quantity';
import type { Place } from '../../lib/rules/rule-set';
import { us49cfr213 } from '../../lib/rules/sets/us-49cfr213';
import { us49cfr215_229_230 } from '../../lib/rules/sets/us-49cfr215-229-230';

const TANGENT: Place = { onCurve: false };
const CURVE: Place = { onCurve: true, curveDegrees: 8 };

const one = (
  classId: string,
  quantity: RuleQuantityId,
  place: Place,
  sense: 'max' | 'min' = 'max',
): ClassLimit => {
  const set = Number.isNaN(Number(classId)) ? us49cfr215_229_230 : us49cfr213;
  return limitsFor(set, classId, quantity, place).find((l) => l.limit.sense === sense)!;
};

describe('which limits apply', () => {
  it('tells tangent from curve', () => {
    expect(limitsFor(us49cfr213, '5', 'alinement62', TANGENT).map((l) => l.printed)).toEqual(['3/4"']);
    expect(limitsFor(us49cfr213, '5', 'alinement62', CURVE).map((l) => l.printed)).toEqual(['5/8"']);
    expect(limitsFor(us49cfr213, '5', 'crosslevelTangent', CURVE)).toEqual([]);
    expect(limitsFor(us49cfr213, '5', 'crosslevelReverseOnCurve', TANGENT)).toEqual([]);
  });

  it('gives both tie counts on a curve of unknown sharpness', () => {
    expect(limitsFor(us49cfr213, '3', 'tiesPer39ft', { onCurve: true }).map((l) => l.value)).toEqual([8, 10]);
  });

  it('does not take a turnout on tangent for a curve, except in the count of ties', () => {
    const turnout: Place = { onCurve: false, inTurnout: true };
    expect(limitsFor(us49cfr213, '5', 'alinement62', turnout).map((l) => l.printed)).toEqual(['3/4"']);
    expect(limitsFor(us49cfr213, '5', 'alinement31', turnout)).toEqual([]);
    expect(limitsFor(us49cfr213, '5', 'tiesPer39ft', turnout).map((l) => l.value)).toEqual([14]);
  });

  it('gives nothing for an unknown class', () => {
    expect(limitsFor(us49cfr213, '9', 'gauge', TANGENT)).toEqual([]);
  });
});

describe('holding a value against a limit', () => {
  it('honours "or more" and "more than" exactly at the limit', () => {
    const freight = one('freightCar', 'flatSpot', TANGENT);
    const locomotive = one('locomotiveRoad', 'flatSpot', TANGENT);
    expect(checkLimit({ value: 63.5, u: 0, limit: freight })).toMatchObject({
      exceeded: false,
      probabilityExceeds: 0,
    });
    expect(checkLimit({ value: 63.5, u: 0, limit: locomotive })).toMatchObject({
      exceeded: true,
      probabilityExceeds: 1,
    });
  });

  it('is not led astray by the last bit of a sum', () => {
    const limit = one('2', 'gaugeUnderLoad', TANGENT);
    const sum = 56.5 * 25.4 + 0.75 * 25.4 + 0.3 * 25.4 + 0.2 * 25.4;
    expect(sum).not.toBe(limit.value);
    expect(checkLimit({ value: sum, u: 0, limit }).exceeded).toBe(false);
  });

  it('gives one half exactly at the limit, and the tail of the normal distribution beside it', () => {
    const limit = one('2', 'gauge', TANGENT);
    expect(checkLimit({ value: limit.value, u: 0.9, limit }).probabilityExceeds).toBeCloseTo(0.5, 12);
    expect(checkLimit({ value: limit.value + 0.9, u: 0.9, limit }).probabilityExceeds).toBeCloseTo(
      0.841344746,
      8,
    );
    expect(checkLimit({ value: limit.value - 1.8, u: 0.9, limit }).probabilityExceeds).toBeCloseTo(
      0.022750132,
      8,
    );
    const least = one('2', 'gauge', TANGENT, 'min');
    expect(checkLimit({ value: least.value - 0.9, u: 0.9, limit: least }).probabilityExceeds).toBeCloseTo(
      0.841344746,
      8,
    );
  });

  it('counts a deviation to either side, and both tails of its uncertainty', () => {
    const limit = one('5', 'alinement62', TANGENT);
    const out = checkLimit({ value: -25, u: 2, limit });
    expect(out).toEqual(checkLimit({ value: 25, u: 2, limit }));
    expect(out.exceeded).toBe(true);
    expect(checkLimit({ value: 0, u: limit.value, limit }).probabilityExceeds).toBeCloseTo(
      2 * 0.158655254,
      8,
    );
  });

  it('carries name, citation and source for the report', () => {
    expect(checkLimit({ value: 1460, u: 1, limit: one('3', 'gauge', TANGENT) })).toMatchObject({
      name: 'Gauge, class 3',
      citation: '49 CFR 213.53(b)',
      sense: 'max',
      source: { status: 'published' },
    });
  });

  const everyLimit = RULE_SETS.flatMap((set) =>
    set.classes.flatMap((c) =>
      set.limits.flatMap((l) => [TANGENT, CURVE].flatMap((place) => limitsFor(set, c.id, l.quantity, place))),
    ),
  );

  it('for every limit: probability lies in 0 to 1, grows as the value worsens, and tends to 0 or 1 as u shrinks', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...everyLimit),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        fc.double({ min: 0.01, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        (limit, within, u, step) => {
          const worse = limit.limit.sense === 'max' ? 1 : -1;
          const start = limit.value - worse * within * limit.value * 0.2;
          const p = (value: number, spread: number) =>
            checkLimit({ value, u: spread, limit }).probabilityExceeds;
          expect(p(start, u)).toBeGreaterThanOrEqual(0);
          expect(p(start, u)).toBeLessThanOrEqual(1);
          expect(p(start + worse * step, u)).toBeGreaterThanOrEqual(p(start, u) - 1e-12);
          expect(p(start, 1e-9)).toBe(p(start, 0));
        },
      ),
      { seed: 11, numRuns: 500 },
    );
  });

  it('for every limit: the class limit is monotone in the class', () => {
    for (const set of RULE_SETS.filter((each) => each.kind === 'track')) {
      for (const limit of set.limits) {
        const values = set.classes
          .map((c) => limit.perClass[c.id])
          .filter((v) => v !== null && v !== undefined);
        const sorted = [...values].sort((a, b) => (limit.sense === 'max' ? b - a : a - b));
        expect(values, limit.id).toEqual(sorted);
      }
    }
  });
});

describe('what is surely within a limit', () => {
  const quantities: readonly RuleQuantityId[] = ['gauge', 'alinement62', 'elevationMax', 'tiesPer39ft'];
  const limits = quantities
    .flatMap((quantity) => limitsFor(us49cfr213, '3', quantity, CURVE))
    // A least amount of something that counts to either side, as a railroad may enter it.
    .flatMap((limit): ClassLimit[] => [
      limit,
      { ...limit, limit: { ...limit.limit, sense: limit.limit.sense === 'max' ? 'min' : 'max' } },
    ]);

  it('is not exceeded, with no chance of it: the same check whatever the value', () => {
    let within = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...limits),
        fc.double({ min: -2000, max: 2000, noNaN: true }),
        fc.constantFrom(0, 1e-9, 0.1, 1, 20),
        (limit, value, u) => {
          if (!isSurelyWithin(value, u, limit)) return;
          within += 1;
          const { exceeded, probabilityExceeds } = checkLimit({ value, u, limit });
          expect({ exceeded, probabilityExceeds }).toEqual({ exceeded: false, probabilityExceeds: 0 });
        },
      ),
      { seed: 213, numRuns: 2000 },
    );
    expect(within).toBeGreaterThan(200);
  });
});
