import { describe, expect, it } from 'vitest';
import { fitText, textWidth, wrapText } from '~/lib/figures/text-width';
import { documentTextWidth } from './pdf-primitives';

describe('textWidth', () => {
  it.each(['Gauge, standing 56 1/2 in', 'δ ≤ 75° µ ½ ⅜ ″ × − – → Σ', 'POD'])(
    'agrees with the font for %s',
    (text) => {
      const measured = documentTextWidth();
      // The font kerns a few pairs; the table does not.
      expect(Math.abs(textWidth(text, 100) - measured(text, 100, false))).toBeLessThan(1.5 * text.length);
      expect(Math.abs(textWidth(text, 100, 'bold') - measured(text, 100, true))).toBeLessThan(
        1.5 * text.length,
      );
    },
  );
});

describe('wrapText', () => {
  it('keeps every word and no line wider than asked', () => {
    const text = 'Read the offset at the middle of the cord and repeat with the shorter chord';
    const lines = wrapText(text, 120, 11);
    expect(lines.join(' ')).toBe(text);
    for (const line of lines) expect(textWidth(line, 11)).toBeLessThanOrEqual(120);
  });
  it('gives nothing for nothing and leaves a long word whole', () => {
    expect(wrapText('  ', 50, 11)).toEqual([]);
    expect(wrapText('superelevation', 10, 11)).toEqual(['superelevation']);
  });
});

describe('fitText', () => {
  it('shortens what is too wide', () => {
    expect(fitText('short', 200, 11)).toBe('short');
    const fitted = fitText('a rather longer label', 60, 11);
    expect(fitted.endsWith('…')).toBe(true);
    expect(textWidth(fitted, 11)).toBeLessThanOrEqual(60);
  });
});
