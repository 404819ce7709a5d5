import { describe, expect, it } from 'vitest';
import { behindEntered } from '~/lib/turnout/behind-entered';

describe('distance behind the tip', () => {
  it.each([
    ['0', 0],
    ['0.0', 0],
    ['1 ft', 304.8],
    ['18 in', 457.2],
    ['1\' 6"', 457.2],
    ['300 mm', 300],
    ['30 cm', 300],
  ])('%s is %d mm', (text, mm) => {
    expect(behindEntered(text)).toEqual({ ok: true, value: mm });
  });

  it.each([
    ['', 'Enter how far'],
    ['12', 'enter the unit too'],
    ['-1 ft', 'leave the minus sign out'],
    ['60 ft', 'longer than any point'],
    ['near', 'near'],
  ])('“%s” is refused and says what to enter', (text, words) => {
    const parsed = behindEntered(text);
    expect(parsed.ok ? '' : parsed.message).toContain(words);
  });
});
