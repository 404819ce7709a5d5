import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { limitsFor } from '~/lib/rules/apply';
import { besideBase, besideRows } from '~/lib/rules/fill-from-base';
import { readRailroadLimits, splitHeads, withChosenHeads } from '~/lib/rules/railroad-lines';
import { RULE_QUANTITIES } from '~/lib/rules/rule-quantity';
import type { RuleLimit, RuleSet } from '~/lib/rules/rule-set';
import { us49cfr213 } from '~/lib/rules/sets/us-49cfr213';
import { buildContext } from '~/lib/findings/context';
import { findings } from '~/lib/findings';
import { stationClasses } from '~/lib/findings/track/class-met';
import { buildRecord, stationSheet } from '../findings/record-builder';

const HEAD = 'name: Invented Lines standard\ndocument: Instructions, edition 3\nbased on: us-49cfr213\n';
const TANGENT = { onCurve: false } as const;
const CURVE = { onCurve: true, curveDegrees: 6 } as const;

const read = (text: string) => {
  const found = readRailroadLimits(HEAD + text);
  if (!found.ok) throw new Error(JSON.stringify(found.bad));
  return found.ruleSet;
};

describe('where the railroad’s own lines are silent', () => {
  const set = read('gauge; most; 2=57 3/4", 3=57 1/2", 4=-\nalinement62; most; 1"; tangent');

  it('the base set holds, and every limit says where it is from', () => {
    const at = (classId: string, quantity: 'gauge' | 'crosslevelDifference62') =>
      limitsFor(set, classId, quantity, TANGENT).map(({ printed, limit }) => [
        limit.sense,
        printed,
        limit.from,
      ]);
    expect(at('3', 'gauge')).toEqual([
      ['max', '57 1/2"', 'Invented Lines standard'],
      ['min', '4\'8"', us49cfr213.name],
    ]);
    // Class 5 is not named, class 4 is with a dash.
    expect(at('5', 'gauge').map(([, printed]) => printed)).toEqual(['4\'8"', '4\'9 1/2"']);
    expect(at('4', 'gauge').map(([sense]) => sense)).toEqual(['min']);
    expect(at('3', 'crosslevelDifference62')).toEqual([['max', '2"', us49cfr213.name]]);
    expect(set.limits.every(({ from }) => from !== undefined)).toBe(true);
    expect(set.conditions?.length).toBe(us49cfr213.conditions?.length);
  });

  it('a line for tangent leaves curves to the base', () => {
    expect(limitsFor(set, '3', 'alinement62', TANGENT).map(({ printed }) => printed)).toEqual(['1"']);
    expect(limitsFor(set, '3', 'alinement62', CURVE).map(({ printed }) => printed)).toEqual(['1 3/4"']);
  });

  it('nothing holds where the text says so', () => {
    const alone = read('where silent: nothing\ngauge; most; 3=57 1/2"');
    expect(alone.limits).toHaveLength(1);
    expect(alone.conditions).toBeUndefined();
    expect(readRailroadLimits(`${HEAD}where silent: maybe\ngauge; most; 58"`).ok).toBe(false);
  });

  it('class met and exceptions follow both', () => {
    const record = buildRecord({
      fields: { ruleSet: 'railroad', trackClass: '3', alignment: 'tangent' },
      station: stationSheet([-1, 0], {
        gauge: (step) => (step === 0 ? '57 5/8' : '56 1/2'),
        crosslevel: (step) => (step === 0 ? '2 1/4' : '0'),
      }),
      changes: { railroadLimits: `${HEAD}gauge; most; 3=57 1/2"; item 4` },
    });
    const context = buildContext(record, { seed: 1 });
    const met = stationClasses(context, findings(record, { seed: 1 }));
    expect(
      met[1]?.exceptions.map((each) => each.kind === 'limit' && each.exception.limit.limit.from),
    ).toEqual(['Invented Lines standard', us49cfr213.name, us49cfr213.name]);
  });
});

describe('own limits beside the base', () => {
  it('are called stricter, looser or the same, class by class', () => {
    const set = read('gauge; most; 1=58", 2=57 7/8", 3=57 3/4", 4=-, 5=57 1/4"');
    const [beside] = besideBase(set.limits[0]!, us49cfr213);
    expect(beside?.classes.map(({ classId, standing }) => `${classId} ${standing}`)).toEqual([
      'excepted dropped',
      '1 same',
      '2 looser',
      '3 same',
      '4 dropped',
      '5 stricter',
    ]);
  });

  it('leave away the classes for which the base holds', () => {
    const rows = besideRows(read('gauge; most; 2=57 7/8", 3=57 1/2", 4=-'), us49cfr213);
    expect(rows.map(({ classIds, standing }) => `${classIds.join()} ${standing}`)).toEqual([
      '2 looser',
      '3 stricter',
      '4 dropped',
    ]);
  });

  it('tells which way is strict for a least', () => {
    const set = read('tiesPer39ft; least; 9');
    const standings = besideBase(set.limits[0]!, us49cfr213).flatMap(({ classes }) =>
      classes.map(({ standing }) => standing),
    );
    expect(standings).toEqual([
      'alone',
      'stricter',
      'stricter',
      'stricter',
      'looser',
      'looser',
      'alone',
      'stricter',
      'same',
      'looser',
      'looser',
      'looser',
    ]);
  });
});

describe('own lines over the base, whatever they name', () => {
  const QUANTITIES = [...new Set(us49cfr213.limits.map(({ quantity }) => quantity))];
  const track = us49cfr213.limits.map(({ quantity, sense }) => ({ quantity, sense }));
  it('leave no amount of the base out, and give none twice', () => {
    fc.assert(
      fc.property(
        fc.subarray(
          track.filter(({ quantity }) => RULE_QUANTITIES[quantity].unit === 'mm'),
          { minLength: 1 },
        ),
        fc.constantFrom('both', 'tangent', 'curve'),
        fc.subarray(['1', '2', '3', '4', '5'], { minLength: 1 }),
        (named, applies, classes) => {
          const lines = named.map(
            ({ quantity, sense }) =>
              `${quantity}; ${sense === 'max' ? 'most' : 'least'}; ${classes.map((id) => `${id}=60"`).join(', ')}; ${applies}`,
          );
          const set = read(lines.join('\n'));
          for (const place of [TANGENT, CURVE]) {
            const isNamed = (quantity: string, sense: string, id: string): boolean =>
              classes.includes(id) &&
              (applies === 'both' || (applies === 'curve') === place.onCurve) &&
              named.some((each) => each.quantity === quantity && each.sense === sense);
            const amounts = (of: RuleSet, which: (limit: RuleLimit, classId: string) => boolean) =>
              us49cfr213.classes.flatMap(({ id }) =>
                QUANTITIES.flatMap((quantity) =>
                  limitsFor(of, id, quantity, place)
                    .filter(({ limit }) => which(limit, id))
                    .map(({ value, limit }) => `${id} ${quantity} ${limit.sense} ${value}`),
                ),
              );
            expect(amounts(set, ({ from }) => from === us49cfr213.name)).toEqual(
              amounts(us49cfr213, ({ quantity, sense }, id) => !isNamed(quantity, sense, id)),
            );
          }
        },
      ),
      { seed: 8, numRuns: 25 },
    );
  });
});

describe('what a form lets a person choose', () => {
  it('is written as lines unless the text has them, and taken out again', () => {
    const chosen = { basedOn: 'us-49cfr213', whereSilent: 'nothing' };
    const text = 'name: A\ndocument: B\ngauge; most; 58"';
    const kept = withChosenHeads(text, chosen);
    expect(splitHeads(kept)).toEqual({ rest: text, heads: chosen });
    expect(splitHeads(withChosenHeads(`based on: en13848-5\n${text}`, chosen)).heads.basedOn).toBe(
      'en13848-5',
    );
    expect(withChosenHeads('{"name": 1}', chosen)).toBe('{"name": 1}');
  });
});
