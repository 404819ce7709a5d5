import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { columnWidths } from '~/lib/report/table/columns';

const need = fc
  .tuple(fc.integer({ min: 5, max: 80 }), fc.integer({ min: 0, max: 400 }))
  .map(([least, more]) => ({ least, natural: least + more }));

const total = (widths: readonly number[]): number => widths.reduce((sum, each) => sum + each, 0);

describe('widths of columns', () => {
  it('fill the table exactly and give every column its longest word when there is room', () => {
    fc.assert(
      fc.property(fc.array(need, { minLength: 1, maxLength: 12 }), (needs) => {
        const widths = columnWidths(needs, 500);
        expect(total(widths)).toBeCloseTo(500, 6);
        const least = needs.reduce((sum, each) => sum + each.least, 0);
        if (least <= 500)
          widths.forEach((each, i) => expect(each).toBeGreaterThanOrEqual(needs[i]!.least - 1e-9));
      }),
      { seed: 3, numRuns: 300 },
    );
  });

  it('leave a fixed column as it is', () => {
    const widths = columnWidths(
      [
        { least: 20, natural: 20, fixed: 34 },
        { least: 30, natural: 300 },
        { least: 30, natural: 60 },
      ],
      400,
    );
    expect(widths[0]).toBe(34);
    expect(total(widths)).toBeCloseTo(400, 6);
  });
});
