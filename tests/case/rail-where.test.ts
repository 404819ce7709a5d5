import { describe, expect, it } from 'vitest';
import { readRailWhere, turnedWhere } from '~/lib/case/rail-where';

const NAMES = new Set(['-3', '12', 'A']);
const read = (where: string) => readRailWhere(where, NAMES);

describe('the place of a rail in words', () => {
  it('is a station of the sheet before anything else', () => {
    for (const where of ['12', 'Station 12', 'sta. 12', ' station 12 '])
      expect(read(where)).toEqual({ kind: 'station', name: '12' });
  });

  it('is the POD, or a distance with its unit, negative before it', () => {
    expect(read('at the POD')).toMatchObject({ kind: 'distance', m: 0 });
    expect(read('0')).toMatchObject({ kind: 'distance', m: 0 });
    expect(read('-10 m')).toMatchObject({ kind: 'distance', m: -10 });
    expect(read('10 m from the POD')).toMatchObject({ m: 10, sided: false });
    expect(read('10 m before the POD')).toMatchObject({ m: -10, sided: true });
    expect(read(`-15' 6"`)).toMatchObject({ m: expect.closeTo(-4.7244, 9) as number });
  });

  it('is not guessed from a number without unit, which is feet in one case and metres in another', () => {
    for (const where of ['40', '-15.5', '+7', '3 1/2', 'near the crossing', ''])
      expect(read(where)).toBeNull();
  });

  it('changes sign when it was counted the other way, and no more than that', () => {
    expect(turnedWhere('-10 m', NAMES)).toBe('10 m');
    expect(turnedWhere('15.5 ft', NAMES)).toBe('-15.5 ft');
    for (const where of ['Station 12', '-3', 'POD', '0', '40', '10 m before the POD', 'near the crossing'])
      expect(turnedWhere(where, NAMES)).toBe(where);
    for (const where of ['-10 m', '15.5 ft', '3 m from the POD'])
      expect(turnedWhere(turnedWhere(where, NAMES), NAMES)).toBe(where);
  });
});
