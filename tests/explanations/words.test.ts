import { describe, expect, it } from 'vitest';
import { cautiousWord, timesText } from '~/lib/explanations/words';

describe('words for weights', () => {
  it('never rise above moderately strong, and say when they were held back', () => {
    expect(cautiousWord(500)).toEqual({ word: 'moderatelyStrong', capped: false });
    expect(cautiousWord(5_000)).toEqual({ word: 'moderatelyStrong', capped: true });
    expect(cautiousWord(5e7)).toEqual({ word: 'moderatelyStrong', capped: true });
    expect(cautiousWord(0.1).word).toBe('none');
  });

  it('give a ratio to the figures it deserves', () => {
    expect(timesText(0)).toBe('about as');
    expect(timesText(4.77)).toBe('about 3 times more');
    expect(timesText(11)).toBe('about 13 times more');
    expect(timesText(16)).toBe('about 40 times more');
    expect(timesText(21.8)).toBe('about 150 times more');
    expect(timesText(37.7)).toBe('about 6,000 times more');
    expect(timesText(55)).toBe('more than 10,000 times more');
  });
});
