import { describe, expect, it } from 'vitest';
import { caseKind } from '../../lib/case/kinds/case';
import { vehicleKind } from '../../lib/case/kinds/vehicle';
import type { Kind } from '../../lib/case/kind';
import {
  classForSpeed,
  equipmentClassFor,
  equipmentSetOf,
  RULE_SETS,
  ruleSetById,
} from '../../lib/rules/index';
import type { RuleLimit, RuleSet } from '../../lib/rules/rule-set';
import { ruleSetSchema } from '../../lib/rules/schema';
import { en13848_5 } from '../../lib/rules/sets/en13848-5';
import { us49cfr213 } from '../../lib/rules/sets/us-49cfr213';
import { us49cfr215_229_230 } from '../../lib/rules/sets/us-49cfr215-229-230';

const choices = (kind: Kind, fieldId: string): readonly string[] => {
  const field = kind.fields.find((each) => each.id === fieldId);
  return field?.type === 'choice' ? field.choices.map((each) => each.id) : [];
};

describe('every built-in rule set', () => {
  it.each(RULE_SETS.map((set) => [set.id, set] as const))('%s satisfies the schema', (_id, set) => {
    expect(ruleSetSchema.safeParse(set).error?.issues ?? []).toEqual([]);
  });

  it('has its own id, and names an equipment set that exists', () => {
    expect(new Set(RULE_SETS.map((set) => set.id)).size).toBe(RULE_SETS.length);
    for (const set of RULE_SETS) {
      if (set.equipmentSet !== undefined) expect(equipmentSetOf(set)?.kind).toBe('equipment');
    }
    expect(equipmentSetOf(us49cfr213)).toBe(us49cfr215_229_230);
    expect(equipmentSetOf(en13848_5)).toBeUndefined();
  });

  it('marks as from memory what was not read', () => {
    expect(en13848_5.limits.every((limit) => limit.source.status === 'from memory')).toBe(true);
    const freight = us49cfr215_229_230.limits.filter((limit) => limit.citation.startsWith('49 CFR 215.103'));
    expect(freight.length).toBeGreaterThan(0);
    expect(freight.every((limit) => limit.source.status === 'from memory')).toBe(true);
  });
});

describe('the schema refuses', () => {
  const first = us49cfr213.limits[0]!;
  const withLimit = (change: Partial<RuleLimit>): RuleSet => ({
    ...us49cfr213,
    limits: [{ ...first, ...change }, ...us49cfr213.limits.slice(1)],
  });
  const messages = (set: unknown): string =>
    (ruleSetSchema.safeParse(set).error?.issues ?? []).map((issue) => issue.message).join(' ');

  it.each([
    [
      'a class left out',
      withLimit({ perClass: { '1': 1422.4 }, asPrinted: { '1': '4\'8"' } }),
      'each of the classes',
    ],
    ['an amount without its printed text', withLimit({ asPrinted: {} }), 'printed text'],
    [
      'a faster class that is allowed more',
      withLimit({ perClass: { ...first.perClass, '5': 1400 } }),
      'faster class is allowed more',
    ],
    ['a wheel limit in a track set', withLimit({ quantity: 'treadHollow' }), 'does not belong'],
    ['a least deviation', withLimit({ quantity: 'profile62' }), 'a most, not a least'],
    [
      'two limits of one name',
      withLimit({ id: us49cfr213.limits[1]!.id }),
      'Two limits or conditions have the same id',
    ],
    ['no limits', { ...us49cfr213, limits: [] }, ''],
    ['an unknown quantity', withLimit({ quantity: 'comfort' as RuleLimit['quantity'] }), ''],
    ['a limit without a citation', withLimit({ citation: ' ' }), ''],
  ])('%s', (_what, set, says) => {
    expect(ruleSetSchema.safeParse(set).success).toBe(false);
    expect(messages(set)).toContain(says);
  });
});

describe('rule sets and the case record speak of the same things', () => {
  it('classes of track', () => {
    expect(choices(caseKind, 'trackClass')).toEqual(us49cfr213.classes.map((each) => each.id));
  });

  it('rule sets a case can be held against', () => {
    const offered = choices(caseKind, 'ruleSet');
    expect(offered.length).toBeGreaterThan(0);
    // The railroad's own limits are entered with the case and are no built-in set.
    expect(offered).toContain('railroad');
    for (const id of offered.filter((each) => each !== 'railroad'))
      expect(ruleSetById(id)?.kind).toBe('track');
  });

  it('vehicle types: freight cars by part 215, locomotives by part 229, and some by neither', () => {
    const covered = choices(vehicleKind, 'type').map(
      (type) => [type, equipmentClassFor(us49cfr215_229_230, type)?.id] as const,
    );
    const of = (classId: string | undefined) =>
      covered.filter(([, id]) => id === classId).map(([type]) => type);
    expect(of('locomotiveRoad')).toEqual(['locomotive']);
    expect(of(undefined)).toEqual(['passenger', 'other']);
    expect(of('freightCar')).toHaveLength(covered.length - 3);
  });
});

describe('class for a speed', () => {
  it('is the slowest that allows it', () => {
    expect(classForSpeed(us49cfr213, 25 * 0.44704, 'freight')?.id).toBe('2');
    expect(classForSpeed(us49cfr213, 26 * 0.44704, 'freight')?.id).toBe('3');
    expect(classForSpeed(us49cfr213, 10 * 0.44704, 'freight')?.id).toBe('1');
    expect(classForSpeed(us49cfr213, 12 * 0.44704, 'passenger')?.id).toBe('1');
    expect(classForSpeed(us49cfr213, 100 * 0.44704, 'freight')).toBeUndefined();
    expect(classForSpeed(en13848_5, 80 / 3.6, 'freight')?.id).toBe('v80');
    expect(classForSpeed(en13848_5, 81 / 3.6, 'freight')?.id).toBe('v120');
  });
});
