import { describe, expect, it } from 'vitest';
import type { Trace } from '~/lib/case/trace';
import { buildContext } from '~/lib/findings/context';
import { stockRail } from '~/lib/findings/turnout/stock-rail';
import { traceOf } from '../report/traced-record';
import { worn } from '../rail/worn';
import { buildRecord, type EntitySpec } from './record-builder';

const UNDISTURBED = { disturbance: 'undisturbed' } as const;

const rail = (id: string, fields: EntitySpec['fields'] = {}): EntitySpec => ({
  id,
  fields: { rail: 'right', where: 'POD', section: '136RE', ...UNDISTURBED, ...fields },
});

const outlineOf = (id: string): Trace =>
  traceOf(
    `trace of ${id}`,
    { shape: 'rail', subject: { kind: 'rail', id }, side: 'right' },
    worn({ sectionId: '136RE', topMm: 2, faceDeg: 82, faceMm: 2, atDepthMm: 16 }, 60),
  );

/** The stock rail taken for the turnout `x1`. */
function taken(
  rails: readonly EntitySpec[],
  { traced = [], removed = [] }: { traced?: readonly string[]; removed?: readonly string[] } = {},
) {
  const turnout = (id: string, name: string): EntitySpec => ({
    id,
    fields: { name, movement: 'facing', pointRead: 'right', ...UNDISTURBED },
    removed: removed.includes(id) ? { at: '2031-04-09', reason: 'entered twice' } : null,
  });
  const record = buildRecord({
    rail: rails,
    turnout: [turnout('x1', 'East switch'), turnout('x2', 'West switch')],
    changes: { traces: traced.map(outlineOf) },
  });
  const context = buildContext(record, { seed: 1 });
  return stockRail(context, 'right', record.entities.turnout[0]!);
}

describe('stock rail of a turnout', () => {
  it('where none is said to be it: the nearest to the POD with an outline, before nearer ones without', () => {
    const rails = [rail('near'), rail('far', { where: '300 ft' }), rail('mid', { where: '100 ft' })];
    const found = taken(rails, { traced: ['far', 'mid'] });
    expect(found?.trace?.id).toBe('trace of mid');
    expect(found?.remark).toContain('No rail is said to be the stock rail of this turnout');
    expect(taken(rails)?.trace).toBeNull();
  });

  it('the rail said to be it goes before a nearer one, by its outline', () => {
    const rails = [rail('near'), rail('said', { where: '-940 ft', stockRailOf: 'x1' })];
    const found = taken(rails, { traced: ['near', 'said'] });
    expect(found?.trace?.id).toBe('trace of said');
    expect(found?.remark).toBe(
      'Stock rail from the outline of a rail. The rail said to be the stock rail of this turnout.',
    );
  });

  it('and by the new shape of its section before the outline of another rail', () => {
    const rails = [rail('near'), rail('said', { where: '-940 ft', section: '115RE', stockRailOf: 'x1' })];
    const found = taken(rails, { traced: ['near'] });
    expect(found?.trace).toBeNull();
    expect(found?.section).toBe('115RE');
    expect(found?.uMm).toBe(1);
  });

  it('of two said to be it, the one with an outline', () => {
    const rails = [rail('a', { stockRailOf: 'x1' }), rail('b', { where: '-940 ft', stockRailOf: 'x1' })];
    expect(taken(rails, { traced: ['b'] })?.trace?.id).toBe('trace of b');
  });

  it('one said to be it whose section has no shape leaves the choice to the others', () => {
    const rails = [rail('near'), rail('said', { section: 'other', stockRailOf: 'x1' })];
    expect(taken(rails, { traced: ['near'] })?.trace?.id).toBe('trace of near');
  });

  it('the stock rail of another turnout comes after every rail that is none, and says so', () => {
    const rails = [rail('theirs', { stockRailOf: 'x2' }), rail('free', { where: '600 ft' })];
    expect(taken(rails, { traced: ['theirs', 'free'] })?.trace?.id).toBe('trace of free');
    expect(taken(rails.slice(0, 1), { traced: ['theirs'] })?.remark).toContain(
      'It is said to be the stock rail of West switch.',
    );
  });

  it('the stock rail of a turnout that was removed is a rail like any other', () => {
    const rails = [rail('theirs', { stockRailOf: 'x2' }), rail('free', { where: '600 ft' })];
    const found = taken(rails, { traced: ['theirs', 'free'], removed: ['x2'] });
    expect(found?.trace?.id).toBe('trace of theirs');
  });

  it('a rail of the other side is never taken', () => {
    expect(taken([rail('left', { rail: 'left', stockRailOf: 'x1' })], { traced: ['left'] })).toBeNull();
  });
});
