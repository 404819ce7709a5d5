import { describe, expect, it } from 'vitest';
import { layOut, type Placed } from '~/app/track/lay-out';

const asked = (given: Partial<Parameters<typeof layOut>[1]> = {}) =>
  ({ count: '4', spacing: `15' 6"`, side: 'before', ...given }) as const;

function laid(
  stations: readonly Placed[],
  given: Parameters<typeof asked>[0] = {},
  system: 'us' | 'metric' = 'us',
) {
  const result = layOut(stations, asked(given), system);
  if (!result.ok) throw new Error(result.message);
  return result.value;
}

describe('laying out stations', () => {
  it('starts at the POD and goes back a quarter of a 62-ft chord at a time', () => {
    expect(laid([]).map(({ name, entered, unit }) => [name, entered, unit])).toEqual([
      ['0', '0', 'ft'],
      ['-1', '-15.5', 'ft'],
      ['-2', '-31', 'ft'],
      ['-3', '-46.5', 'ft'],
      ['-4', '-62', 'ft'],
    ]);
    expect(laid([])[4]?.value).toBeCloseTo(-62 * 0.3048, 12);
  });

  it('goes on from the furthest station and the highest number of that side', () => {
    const there = [
      { name: '0', positionM: 0 },
      { name: '-1', positionM: -5 },
      { name: '-2', positionM: -11 },
      { name: '1', positionM: 5 },
    ];
    expect(
      laid(there, { count: '2', spacing: '5' }, 'metric').map(({ name, entered }) => [name, entered]),
    ).toEqual([
      ['-3', '-16'],
      ['-4', '-21'],
    ]);
    expect(
      laid(there, { count: '1', spacing: '5 m', side: 'past' }, 'metric').map(({ name, entered }) => [
        name,
        entered,
      ]),
    ).toEqual([['2', '10']]);
  });

  it.each([
    [{ count: '0' }, 'how many'],
    [{ count: '201' }, 'how many'],
    [{ count: 'ten' }, 'how many'],
    [{ spacing: '0' }, 'above zero'],
    [{ spacing: '-5' }, 'above zero'],
    [{ count: '200', spacing: '500 ft' }, 'further from the POD'],
  ])('refuses %o and says what to enter', (given, words) => {
    const result = layOut([], asked(given), 'us');
    expect(result.ok ? '' : result.message).toContain(words);
  });
});
