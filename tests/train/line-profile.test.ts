import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { courseOf, valueOnLine, type Course, type LineRow } from '~/lib/train/line-profile';

const row = (fromM: number, toM: number, value: number, changes: Partial<LineRow> = {}): LineRow => ({
  fromM,
  toM,
  value,
  u: 0.001,
  uPlaceM: 0,
  ...changes,
});

const course = (...rows: LineRow[]): Course => {
  const made = courseOf(rows);
  if (made === null) throw new Error('no course');
  return made;
};

describe('valueOnLine', () => {
  const line = course(row(-300, -200, 0), row(-140, 0, 0.004), row(60, 60, 0.001));

  it('holds within a row and runs straight between rows, as a spiral does', () => {
    expect(valueOnLine(line, -250)?.value).toBe(0);
    expect(valueOnLine(line, -170)?.value).toBeCloseTo(0.002, 12);
    expect(valueOnLine(line, -10)?.value).toBe(0.004);
    expect(valueOnLine(line, 30)?.value).toBeCloseTo(0.0025, 12);
  });

  it('says nothing before the first and beyond the last row', () => {
    expect(valueOnLine(line, -300.1)).toBeNull();
    expect(valueOnLine(line, 60.1)).toBeNull();
    expect(valueOnLine(line, 60)?.value).toBe(0.001);
    expect(courseOf([])).toBeNull();
  });

  it('steps where rows meet, and names the rows it took', () => {
    const step = course(row(-100, 0, 0.01), row(0, 100, -0.01));
    expect(valueOnLine(step, -0.001)?.value).toBe(0.01);
    expect(valueOnLine(step, 0)?.value).toBe(-0.01);
    expect(valueOnLine(step, -50)?.rows).toEqual([0]);
    expect(valueOnLine(line, -170)?.rows).toEqual([0, 1]);
  });

  it('knows a value between two rows less well where their places are not well known', () => {
    const sure = course(row(0, 0, 0), row(100, 100, 0.02));
    const unsure = course(row(0, 0, 0, { uPlaceM: 10 }), row(100, 100, 0.02, { uPlaceM: 10 }));
    // Half way: slope 0.0002 over 10 m at either end, half of each.
    expect(valueOnLine(sure, 50)?.u).toBeCloseTo(Math.hypot(0.0005, 0.0005), 12);
    expect(valueOnLine(unsure, 50)?.u).toBeCloseTo(Math.hypot(0.0005, 0.0005, 0.001, 0.001), 12);
  });

  it('is the same whatever the order of the rows and of their ends', () => {
    const rows = [row(-300, -200, 0), row(-140, 0, 0.004), row(60, 60, 0.001)];
    fc.assert(
      fc.property(
        fc.shuffledSubarray(rows, { minLength: 3, maxLength: 3 }),
        fc.boolean(),
        fc.double({ min: -320, max: 80, noNaN: true }),
        (shuffled, swap, m) => {
          const other = course(
            ...shuffled.map((each) => (swap ? { ...each, fromM: each.toM, toM: each.fromM } : each)),
          );
          return valueOnLine(other, m)?.value === valueOnLine(line, m)?.value;
        },
      ),
      { seed: 7, numRuns: 200 },
    );
  });
});
