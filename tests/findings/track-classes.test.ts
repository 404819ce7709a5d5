import { describe, expect, it } from 'vitest';
import { findings } from '~/lib/findings';
import { buildContext } from '~/lib/findings/context';
import { stationClasses } from '~/lib/findings/track/class-met';
import { buildRecord, stationSheet } from './record-builder';

const classesOf = (fields: Record<string, string>, gauge: (step: number) => string) => {
  const record = buildRecord({
    fields,
    station: stationSheet([-2, -1, 0], { gauge, crosslevel: () => '0' }),
  });
  const context = buildContext(record, { seed: 1 });
  return stationClasses(context, findings(record, { seed: 1 }));
};

describe('the class of track each station meets', () => {
  const gauge = (step: number) => (step === -1 ? '57 11/16' : step === 0 ? '58 1/16' : '56 1/2');

  it('is the highest whose limits all its values meet, with the exceptions to the class in force', () => {
    const met = classesOf({ alignment: 'tangent', trackClass: '4' }, gauge);
    expect(met.map(({ highest }) => highest)).toEqual(['class 5', 'class 3', null]);
    // 49 CFR 213.53(b), class 4: at most 4 ft 9 1/2 in.
    const [exception] = met[1]?.exceptions ?? [];
    if (exception?.kind !== 'limit') throw new Error('a limit is not met');
    expect(exception.finding.id).toBe('gauge:s-1');
    expect(exception.exception.excess).toBeCloseTo((57 + 11 / 16 - 57.5) * 25.4, 6);
    expect(exception.exception.limit.limit.citation).toBe('49 CFR 213.53(b)');
    expect(exception.exception.probability).toBeGreaterThan(0.99);
    expect(met[0]?.exceptions).toEqual([]);
  });

  it('reaches excepted track only where it was so designated', () => {
    const met = classesOf({ alignment: 'tangent', trackClass: 'excepted' }, gauge);
    expect(met[2]?.highest).toBe('excepted track');
  });

  it('says nothing without a set of limits', () => {
    expect(classesOf({ alignment: 'tangent', ruleSet: '' }, gauge)).toEqual([]);
  });
});
