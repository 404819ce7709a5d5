import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { curveSegment, CURVE_SEGMENT_M, deviationsFromUniform, segmentAverage } from '~/lib/track/deviation';

const SEED = { seed: 6220 };
const offsets = fc.array(fc.double({ min: -300, max: 300, noNaN: true }), { minLength: 3, maxLength: 60 });

describe('deviation from uniform', () => {
  it('is nothing on a circle or a steady spiral, to the last station that has neighbours', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 50 }),
        fc.double({ min: -20, max: 20, noNaN: true }),
        fc.double({ min: -200, max: 200, noNaN: true }),
        (count, slope, start) => {
          const found = deviationsFromUniform(Array.from({ length: count }, (_, i) => start + slope * i));
          expect(found[0]).toBeNull();
          expect(found.at(-1)).toBeNull();
          for (const at of found.slice(1, -1)) expect(at?.deviation).toBeCloseTo(0, 9);
        },
      ),
      SEED,
    );
  });

  it('runs the other way with the sheet reversed, and does not change with the datum', () => {
    fc.assert(
      fc.property(offsets, fc.integer({ min: -50, max: 50 }), (values, datum) => {
        const found = deviationsFromUniform(values);
        const reversed = deviationsFromUniform([...values].reverse()).reverse();
        const shifted = deviationsFromUniform(values.map((v) => v + datum));
        found.forEach((at, i) => {
          expect(reversed[i]?.used).toBe(at?.used);
          expect(shifted[i]?.deviation ?? 0).toBeCloseTo(at?.deviation ?? 0, 9);
          expect(reversed[i]?.deviation ?? 0).toBeCloseTo(at?.deviation ?? 0, 9);
        });
      }),
      SEED,
    );
  });

  it('beside a missing station its opposite is left out too, and nothing is found where nothing was taken', () => {
    const found = deviationsFromUniform([0, 1, 2, 3, 4, 5, NaN, 7, 8, 9, 10, 11]);
    expect(found[5]).toMatchObject({ used: 7 });
    expect(found[5]?.deviation).toBeCloseTo(0, 12);
    expect(found[6]).toBeNull();
  });

  it('the window can be another', () => {
    expect(deviationsFromUniform([0, 0, 9, 0, 0], 3)[2]).toMatchObject({ uniform: 3, deviation: 6, used: 3 });
  });
});

describe('average over a segment', () => {
  it('stays within the body and holds the point when the body is long enough', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 500, noNaN: true }),
        fc.double({ min: 60, max: 500, noNaN: true }),
        (around, length) => {
          const point = Math.min(around, length);
          const segment = curveSegment(point, 0, length);
          expect(segment.toM - segment.fromM).toBeCloseTo(CURVE_SEGMENT_M, 9);
          expect(segment.fromM).toBeGreaterThanOrEqual(0);
          expect(segment.toM).toBeLessThanOrEqual(length + 0.01);
          expect(point).toBeGreaterThanOrEqual(segment.fromM);
          expect(point).toBeLessThan(segment.toM);
        },
      ),
      SEED,
    );
  });

  it('lies between the least and the greatest value, and passes over what was not taken', () => {
    fc.assert(
      fc.property(offsets, (values) => {
        const positions = values.map((_, i) => i);
        const segment = { fromM: 0, toM: values.length };
        const average = segmentAverage(positions, values, segment);
        expect(average?.used).toBe(values.length);
        expect(average?.mean).toBeGreaterThanOrEqual(Math.min(...values) - 1e-9);
        expect(average?.mean).toBeLessThanOrEqual(Math.max(...values) + 1e-9);
        const some = segmentAverage(positions, [NaN, ...values.slice(1)], segment);
        expect(some?.used).toBe(values.length - 1);
      }),
      SEED,
    );
  });

  it('is null where no station has a value', () => {
    expect(segmentAverage([0, 1], [NaN, NaN], { fromM: 0, toM: 5 })).toBeNull();
    expect(segmentAverage([0, 1], [3, 4], { fromM: 5, toM: 9 })).toBeNull();
  });
});
