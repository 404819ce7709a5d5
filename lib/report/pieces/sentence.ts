import type { Sentence } from '../../explanations/argument';
import type { References } from '../references';
import type { Run } from '../type/inline';

/** A sentence of the argument with what each of its parts rests on. */
export const sentenceRuns = (sentence: Sentence, refs: References): readonly Run[] =>
  sentence.flatMap((part): readonly Run[] => {
    const cited = refs.citeRefs(part.refs);
    if (cited.length === 0) return [{ text: part.text }];
    // The citation stands before the punctuation that ends the part.
    const [, words = '', end = ''] = /^(.*?)([\s:;,.]*)$/s.exec(part.text) ?? [];
    return [{ text: words }, ...cited, { text: end }];
  });

/** +12 or −3, in decibans. */
export function decibansText(value: number): string {
  const rounded = Math.round(value * 10) / 10;
  if (rounded === 0) return '0';
  const size = Math.abs(rounded);
  return `${rounded > 0 ? '+' : '−'}${size >= 10 ? size.toFixed(0) : size.toFixed(1)}`;
}
