import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { describeException, highestClassMet, type NamedValue } from '../../lib/rules/class-met';
import { en13848_5 } from '../../lib/rules/sets/en13848-5';
import { us49cfr213 } from '../../lib/rules/sets/us-49cfr213';

const inch = (n: number) => n * 25.4;
const TANGENT = { onCurve: false } as const;
const CURVE = { onCurve: true, curveDegrees: 8 } as const;
const gauge = (n: number): NamedValue => ({ quantity: 'gauge', value: inch(n), u: 0.9 });

describe('highest class met', () => {
  it('goes by the worst of the values', () => {
    expect(highestClassMet(us49cfr213, [gauge(56.5)], TANGENT).highest).toBe('5');
    expect(highestClassMet(us49cfr213, [gauge(57.75)], TANGENT).highest).toBe('3');
    expect(highestClassMet(us49cfr213, [gauge(57.875)], TANGENT).highest).toBe('1');
    const warped: NamedValue = { quantity: 'crosslevelDifference62', value: inch(-2.5), u: 0.9 };
    expect(highestClassMet(us49cfr213, [gauge(56.5), warped], CURVE).highest).toBe('1');
  });

  it('meets no class when class 1 is not met, and excepted only where so designated', () => {
    const wide = [gauge(58.125)];
    expect(highestClassMet(us49cfr213, wide, CURVE).highest).toBeNull();
    expect(highestClassMet(us49cfr213, wide, CURVE, { designated: 'excepted' }).highest).toBe('excepted');
    expect(highestClassMet(us49cfr213, [gauge(58.5)], CURVE, { designated: 'excepted' }).highest).toBeNull();
  });

  it('lists the exceptions with section, limit, reading, excess and probability', () => {
    const result = highestClassMet(us49cfr213, [gauge(57.875)], TANGENT);
    const class2 = result.classes.find((c) => c.classId === '2')!;
    expect(class2.met).toBe(false);
    const [exception] = class2.exceptions;
    expect(exception).toMatchObject({ quantity: 'gauge', classId: '2' });
    expect(exception!.excess).toBeCloseTo(inch(0.125), 6);
    expect(exception!.probability).toBeGreaterThan(0.99);
    expect(describeException(exception!)).toBe(
      `49 CFR 213.53(b): Gauge, class 2: 1470.0 mm; limit at most 4'9 3/4"; beyond it by 3.2 mm; ` +
        'probability that the limit is exceeded 100 %',
    );
  });

  it('keeps what restricts speed apart from the class', () => {
    const worn: NamedValue = { quantity: 'frogPointDown', value: inch(0.75), u: 0.4 };
    const result = highestClassMet(us49cfr213, [gauge(56.5), worn], TANGENT);
    expect(result.highest).toBe('5');
    expect(result.speedExceptions).toHaveLength(1);
    expect(describeException(result.speedExceptions[0]!)).toContain(
      'Speed over the frog not more than 10 mph.',
    );
  });

  it('says what was compared, and claims no class when nothing was', () => {
    const mixed = highestClassMet(
      us49cfr213,
      [gauge(56.5), { quantity: 'twist3m', value: 5, u: 1 }],
      TANGENT,
    );
    expect(mixed.compared).toEqual(['gauge']);
    expect(mixed.notCompared).toEqual(['twist3m']);
    expect(
      highestClassMet(us49cfr213, [{ quantity: 'twist3m', value: 5, u: 1 }], TANGENT).highest,
    ).toBeNull();
    expect(highestClassMet(us49cfr213, [], TANGENT).highest).toBeNull();
  });

  it('works the same for speed bands in millimetres', () => {
    const twist = (value: number): NamedValue => ({ quantity: 'twist3m', value, u: 0.5 });
    expect(highestClassMet(en13848_5, [twist(-18)], CURVE).highest).toBe('v200');
    expect(highestClassMet(en13848_5, [twist(22)], CURVE).highest).toBeNull();
  });

  it('never rises when a reading gets worse or another reading is added', () => {
    const order = [null, '1', '2', '3', '4', '5'];
    const rank = (id: string | null) => order.indexOf(id);
    fc.assert(
      fc.property(
        fc.double({ min: 56, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 4, noNaN: true }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        (wide, warp, more) => {
          const warped: NamedValue = { quantity: 'crosslevelDifference62', value: inch(warp), u: 1 };
          const before = rank(highestClassMet(us49cfr213, [gauge(wide)], CURVE).highest);
          expect(rank(highestClassMet(us49cfr213, [gauge(wide + more)], CURVE).highest)).toBeLessThanOrEqual(
            before,
          );
          expect(rank(highestClassMet(us49cfr213, [gauge(wide), warped], CURVE).highest)).toBeLessThanOrEqual(
            before,
          );
        },
      ),
      { seed: 3 },
    );
  });
});
