import type { Source } from '../findings/finding';
import type { SupportWord } from './argument';

/**
 * Words for a likelihood ratio. Bands of the published scale; the band's lower end belongs to it.
 * A secondary listing of the same bands was seen; the guideline itself was not at hand.
 */
const BANDS: readonly { readonly from: number; readonly word: SupportWord; readonly text: string }[] = [
  { from: 10_000, word: 'veryStrong', text: 'very strong support' },
  { from: 1_000, word: 'strong', text: 'strong support' },
  { from: 100, word: 'moderatelyStrong', text: 'moderately strong support' },
  { from: 10, word: 'moderate', text: 'moderate support' },
  { from: 2, word: 'weak', text: 'weak support' },
  { from: 0, word: 'none', text: 'no support either way' },
];

export const SCALE_SOURCE: Source = {
  text: 'ENFSI Guideline for Evaluative Reporting in Forensic Science (2015): likelihood ratio 2 to 10 weak, 10 to 100 moderate, 100 to 1,000 moderately strong, 1,000 to 10,000 strong, above that very strong',
  status: 'from memory',
};

export const WHY_CAPPED =
  'No stronger word than “moderately strong” is used while the judgements behind it are not calibrated on many cases whose causes were settled otherwise.';

/** The word of the scale for a likelihood ratio of at least 1, whatever the calibration. */
export function scaleWord(ratio: number): SupportWord {
  return BANDS.find(({ from }) => ratio >= from)?.word ?? 'none';
}

/** The word the tool uses: never above "moderately strong". */
export function cautiousWord(ratio: number): { readonly word: SupportWord; readonly capped: boolean } {
  const word = scaleWord(ratio);
  return word === 'strong' || word === 'veryStrong'
    ? { word: 'moderatelyStrong', capped: true }
    : { word, capped: false };
}

export const wordText = (word: SupportWord): string => BANDS.find((band) => band.word === word)?.text ?? '';

/** "about 40 times", to the one or two figures that such a number deserves. */
export function timesText(decibans: number): string {
  const ratio = 10 ** (decibans / 10);
  if (ratio < 1.5) return 'about as';
  if (ratio >= 10_000) return 'more than 10,000 times more';
  const digits = ratio < 10 ? 1 : Math.floor(Math.log10(ratio));
  const step = ratio < 10 ? 1 : 10 ** digits / (ratio / 10 ** digits < 2 ? 10 : 1);
  const rounded = Math.round(ratio / step) * step;
  return `about ${rounded.toLocaleString('en-US')} times more`;
}
