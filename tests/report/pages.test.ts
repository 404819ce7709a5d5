import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planPages } from '~/lib/report/table/pages';

const HEAD = 14;
const NEXT = 600;

const table = fc.record({
  heights: fc.array(fc.integer({ min: 10, max: 120 }), { minLength: 1, maxLength: 120 }),
  first: fc.integer({ min: 0, max: NEXT }),
  mayMove: fc.boolean(),
});

const used = (heights: readonly number[], { from, to }: { from: number; to: number }): number =>
  heights.slice(from, to).reduce((sum, each) => sum + each, 0);

describe('dividing a table over pages', () => {
  it('keeps every row once, in order, and never more than a page holds', () => {
    fc.assert(
      fc.property(table, ({ heights, first, mayMove }) => {
        const chunks = planPages(heights, { head: HEAD, first, next: NEXT, mayMove });
        if (chunks[0]?.to === 0) {
          expect(mayMove).toBe(true);
          return;
        }
        expect(chunks.flatMap(({ from, to }) => heights.slice(from, to))).toEqual(heights);
        chunks.forEach((chunk, i) => {
          const room = (i === 0 ? first : NEXT) - HEAD;
          if (chunk.to - chunk.from > 1) expect(used(heights, chunk)).toBeLessThanOrEqual(room);
        });
      }),
      { seed: 7, numRuns: 300 },
    );
  });

  it('moves a table of which only one row would fit to the next page', () => {
    const heights = [20, 20, 20, 20];
    const room = { head: HEAD, first: HEAD + 25, next: NEXT };
    expect(planPages(heights, { ...room, mayMove: true })).toEqual([{ from: 0, to: 0 }]);
    expect(planPages(heights, { ...room, mayMove: false })).toEqual([
      { from: 0, to: 1 },
      { from: 1, to: 4 },
    ]);
  });

  it('does not leave one row alone on the last page', () => {
    const heights = Array.from({ length: 11 }, () => 20);
    const chunks = planPages(heights, { head: 0, first: 200, next: 200, mayMove: true });
    expect(chunks).toEqual([
      { from: 0, to: 9 },
      { from: 9, to: 11 },
    ]);
  });

  it('keeps a row that heads others with the first of them', () => {
    const heights = Array.from({ length: 14 }, () => 20);
    const heads = (row: number): boolean => row === 9;
    const chunks = planPages(heights, { head: 0, first: 200, next: 200, mayMove: true }, heads);
    expect(chunks[0]).toEqual({ from: 0, to: 9 });
  });

  it('gives a row higher than a page a page of its own', () => {
    const chunks = planPages([30, 900, 30, 30], { head: 0, first: 600, next: 600, mayMove: false });
    expect(chunks).toContainEqual({ from: 1, to: 2 });
  });
});
