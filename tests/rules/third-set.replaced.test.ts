import { describe, expect, it, vi } from 'vitest';
import type { RuleSet } from '~/lib/rules/rule-set';

/** An invented set with classes of its own, one limit and one condition. */
const invented: RuleSet = {
  id: 'invented-lines',
  name: 'Invented Lines, limits for branch lines',
  choice: 'Invented Lines (branch lines)',
  jurisdiction: 'Nowhere',
  edition: 'Edition 1',
  notes: [],
  kind: 'track',
  classes: [
    { id: 'slow', label: 'slow line', freightSpeedMs: 5, passengerSpeedMs: 5 },
    { id: 'quick', label: 'quick line', freightSpeedMs: 15, passengerSpeedMs: 15 },
  ],
  limits: [
    {
      id: 'wide',
      quantity: 'gauge',
      sense: 'max',
      strict: true,
      applies: 'both',
      perClass: { slow: 1465, quick: 1455 },
      asPrinted: { slow: '1465 mm', quick: '1455 mm' },
      citation: 'Invented Lines, 1',
      source: { text: 'Invented for this test', status: 'engineering judgement' },
    },
  ],
  conditions: [
    {
      id: 'heel',
      wants: 'the heel is tight',
      quantity: 'heelState',
      notMet: ['loose', 'broken'],
      classes: ['quick'],
      citation: 'Invented Lines, 2',
      source: { text: 'Invented for this test', status: 'engineering judgement' },
    },
  ],
  conventions: [],
};

// The one place a set is added is the list; everything else must follow from it.
vi.mock('~/lib/rules/sets', async (original) => {
  const list = await original<{ readonly RULE_SETS: readonly RuleSet[] }>();
  return { ...list, RULE_SETS: [...list.RULE_SETS, invented] };
});

const { findings } = await import('~/lib/findings');
const { buildContext } = await import('~/lib/findings/context');
const { otherClasses, stationClasses } = await import('~/lib/findings/track/class-met');
const { caseKind } = await import('~/lib/case/kinds/case');
const { readRailroadLimits } = await import('~/lib/rules/railroad-lines');
const { ruleSetSchema } = await import('~/lib/rules/schema');
const { buildRecord, stationSheet } = await import('../findings/record-builder');

const record = (trackClass: string) =>
  buildRecord({
    fields: { ruleSet: invented.id, trackClass, alignment: 'tangent' },
    station: stationSheet([-1, 0], { gauge: (step) => (step === 0 ? '1460 mm' : '1450 mm') }),
    turnout: [
      {
        id: 'x1',
        fields: { name: 'North', movement: 'facing', disturbance: 'undisturbed' },
        readings: [{ quantity: 'heelState', state: 'loose' }],
      },
    ],
  });

describe('a set added to the list', () => {
  it('can be chosen for a case, with its classes', () => {
    const choices = (id: string) => {
      const field = caseKind.fields.find((each) => each.id === id);
      return field?.type === 'choice' ? field.choices : [];
    };
    expect(choices('ruleSet')).toContainEqual({ id: invented.id, label: 'Invented Lines (branch lines)' });
    expect(choices('trackClass')).toContainEqual({ id: 'quick', label: 'Quick line' });
    expect(ruleSetSchema.safeParse(invented).success).toBe(true);
  });

  it('is what limits and conditions are held against', () => {
    const all = findings(record('quick'), { seed: 1 });
    const gauge = all.find(({ id }) => id === 'gauge:s0');
    expect(gauge?.kind === 'measured' && gauge.limits).toMatchObject([
      { limit: 1455, exceeded: true, citation: 'Invented Lines, 1' },
    ]);
    expect(all.find(({ id }) => id === 'condition-heel:x1')).toMatchObject({ kind: 'passFail', pass: false });
    const context = buildContext(record('quick'), { seed: 1 });
    expect(stationClasses(context, all).map(({ highest }) => highest)).toEqual(['quick line', 'slow line']);
    expect(otherClasses(context, all)).toMatchObject([{ highest: 'slow line' }]);
  });

  it('can be what the railroad’s own limits are based on', () => {
    const read = readRailroadLimits(
      'name: Own\ndocument: Edition 2\nbased on: invented-lines\ngauge; most; quick=1450 mm',
    );
    expect(read.ok && read.ruleSet.classes.map(({ id }) => id)).toEqual(['slow', 'quick']);
  });
});
