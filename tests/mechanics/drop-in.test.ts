import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  DROP_IN_PARTS,
  dropInMargin,
  dropInShares,
  NEW_NARROW_FLANGE,
  type DropIn,
} from '~/lib/mechanics/drop-in';

const SEED = { seed: 6225 };
const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const wheelset: fc.Arbitrary<DropIn> = fc.record({
  backToBackMm: mm(1330, 1360),
  flangeThicknessMm: mm(18, 36),
  rimWidthMm: mm(120, 150),
  overlapMm: mm(0, 25),
  staticGaugeMm: mm(1420, 1500),
  movementMm: mm(0, 40),
});

describe('drop-in', () => {
  it('the shares add up to what was lost from new, part by part', () => {
    fc.assert(
      fc.property(wheelset, (d) => {
        const asNew = dropInMargin({ ...NEW_NARROW_FLANGE, overlapMm: d.overlapMm, movementMm: 0 });
        const shares = dropInShares(d, NEW_NARROW_FLANGE);
        expect(shares.total).toBeCloseTo(asNew - dropInMargin(d), 8);
        expect(DROP_IN_PARTS.reduce((sum, part) => sum + shares[part], 0)).toBeCloseTo(shares.total, 8);
      }),
      SEED,
    );
  });

  it('a millimetre off the wheelset or onto the gauge is a millimetre off the margin', () => {
    fc.assert(
      fc.property(wheelset, (d) => {
        const margin = dropInMargin(d);
        expect(dropInMargin({ ...d, flangeThicknessMm: d.flangeThicknessMm - 1 })).toBeCloseTo(margin - 1, 8);
        expect(dropInMargin({ ...d, backToBackMm: d.backToBackMm - 1 })).toBeCloseTo(margin - 1, 8);
        expect(dropInMargin({ ...d, rimWidthMm: d.rimWidthMm - 1 })).toBeCloseTo(margin - 1, 8);
        expect(dropInMargin({ ...d, staticGaugeMm: d.staticGaugeMm + 1 })).toBeCloseTo(margin - 1, 8);
        expect(dropInMargin({ ...d, movementMm: d.movementMm + 1 })).toBeCloseTo(margin - 1, 8);
      }),
      SEED,
    );
  });
});
