import { describe, expect, it } from 'vitest';
import { sharedRemarks } from '~/lib/findings/shared-remarks';

describe('remarks that several findings share', () => {
  it('have letters in the order they come; what only one says has none', () => {
    const shared = sharedRemarks([
      { remarks: ['of the wheel', 'its own'] },
      { remarks: ['of the rail', 'of the wheel'] },
      { remarks: ['of the rail'] },
    ]);
    expect([...shared]).toEqual([
      ['of the wheel', 'a'],
      ['of the rail', 'b'],
    ]);
  });

  it('are not shared when one finding says a thing twice', () => {
    expect(sharedRemarks([{ remarks: ['twice', 'twice'] }, { remarks: [] }]).size).toBe(0);
  });

  it('go on after z with aa', () => {
    const remarks = Array.from({ length: 28 }, (_, i) => `remark ${i}`);
    const letters = [...sharedRemarks([{ remarks }, { remarks }]).values()];
    expect([letters[25], letters[26], letters[27]]).toEqual(['z', 'aa', 'ab']);
  });
});
