import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { limitsFor } from '~/lib/rules/apply';
import { readRailroadLimits } from '~/lib/rules/railroad-lines';
import { buildRecord, stationSheet } from '../findings/record-builder';
import { found } from '../findings/by-id';

const HEAD = `name: Invented Lines standard
document: Instructions, edition 3
based on: us-49cfr213
where silent: nothing`;

const badLines = (text: string) => {
  const read = readRailroadLimits(text);
  return read.ok ? [] : read.bad;
};

describe('limits a person writes, one to a line', () => {
  it('become a rule set with amounts class by class or for all, as printed', () => {
    const read = readRailroadLimits(`${HEAD}
# gauge, tighter than the federal limit
gauge; most; 1=57 7/8", 2=57 3/4", 3=57 1/2", 4=-; item 4
Crosslevel difference of two points less than 62 ft apart; most; 1 3/4 in; tangent; condemned
tiesPer39ft; least; 8`);
    if (!read.ok) throw new Error(JSON.stringify(read.bad));
    const gauge = limitsFor(read.ruleSet, '3', 'gauge', { onCurve: false });
    expect(gauge).toMatchObject([{ value: 57.5 * 25.4, printed: '57 1/2"' }]);
    expect(gauge[0]?.limit.citation).toContain('item 4');
    expect(limitsFor(read.ruleSet, '4', 'gauge', { onCurve: false })).toEqual([]);
    const warp = limitsFor(read.ruleSet, '5', 'crosslevelDifference62', { onCurve: false });
    expect(warp[0]).toMatchObject({ value: 1.75 * 25.4, limit: { strict: false, applies: 'tangent' } });
    expect(limitsFor(read.ruleSet, '1', 'tiesPer39ft', { onCurve: false })[0]?.value).toBe(8);
  });

  it('are refused line by line, each with what to write', () => {
    const bad = badLines(`${HEAD}
gauge; most; 57 3/4
width; most; 2"
gauge; more; 57"
profile62; most
alinement62; most; 9=3"`);
    expect(bad.map(({ line }) => line)).toEqual([5, 6, 7, 8, 9]);
    expect(bad[0]?.message).toContain('write the unit');
    expect(bad[1]?.message).toContain('“width”');
    expect(bad[2]?.message).toContain('“most” or “least”');
    expect(bad[3]?.message).toContain('Write the amount');
    expect(bad[4]?.message).toContain('no class “9”');
  });

  it('ask for the lines that head them, and for a first limit', () => {
    expect(
      badLines('')
        .map(({ message }) => message)
        .join(' '),
    ).toMatch(/name:.*document:.*based on:/s);
    expect(badLines(HEAD)[0]?.message).toContain('Add a line for each limit');
    expect(badLines(HEAD.replace('us-49cfr213', 'nothing') + '\ngauge; most; 58"')[0]?.message).toContain(
      'no rule set',
    );
  });

  it('never throw, whatever is pasted', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 300 }), fc.boolean(), (text, headed) => {
        const read = readRailroadLimits(headed ? `${HEAD}\n${text}` : text);
        expect(read.ok || read.bad.length > 0).toBe(true);
      }),
      { seed: 5, numRuns: 300 },
    );
  });
});

describe('a case held against the railroad’s own limits', () => {
  const record = (railroadLimits: string | null) =>
    buildRecord({
      fields: { ruleSet: 'railroad', trackClass: '3', alignment: 'tangent' },
      station: stationSheet([-1], { gauge: () => '57 5/8' }),
      changes: { railroadLimits },
    });

  it('compares with them', () => {
    const widest = found(record(`${HEAD}\ngauge; most; 3=57 1/2"; item 4`)).measured('gaugeWidest');
    expect(widest.limits).toMatchObject([
      { exceeded: true, limit: 57.5 * 25.4, citation: expect.stringContaining('item 4') },
    ]);
  });

  it('says when none are entered', () => {
    const widest = found(record(null)).measured('gaugeWidest');
    expect(widest.limits).toEqual([]);
    expect(widest.remarks.join(' ')).toContain('none are entered');
  });
});
