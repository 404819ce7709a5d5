import type { LoadedCase } from '~/app/case.server';
import { findingHref } from '~/app/findings/view.server';
import type { Sentence } from '~/lib/explanations/argument';
import type { Ref } from '~/lib/explanations/witness';
import type { Finding } from '~/lib/findings/finding';

/** A piece of a sentence and the places in the app it rests on. */
export type Phrase = { readonly text: string; readonly hrefs: readonly string[] };

/** Where one reference leads; null for one that stands on the page itself. */
export function hrefOf(
  { caseId }: Pick<LoadedCase, 'caseId'>,
  findings: ReadonlyMap<string, Finding>,
  { kind, id }: Ref,
): string | null {
  const at = `/cases/${caseId}`;
  switch (kind) {
    case 'reading':
      return `${at}/readings/${id}`;
    case 'recorderRun':
      return `${at}/train#recorder`;
    case 'trace':
      return `${at}/traces/${id}`;
    case 'mark':
      return `${at}/records/mark/${id}`;
    case 'finding': {
      return !findings.has(id) ? null : findingHref(caseId, id);
    }
    case 'judgement':
      return `${at}/explanations/judgements`;
    case 'fact':
      return `?open=${id}#fact-${id}`;
    case 'explanation':
      return `#explanation-${id}`;
    case 'method':
      return `/methods#${id}`;
  }
}

export const phrases = (
  loaded: Pick<LoadedCase, 'caseId'>,
  findings: ReadonlyMap<string, Finding>,
  sentence: Sentence,
): readonly Phrase[] =>
  sentence.map(({ text, refs }) => ({
    text,
    hrefs: [...new Set(refs.flatMap((ref) => hrefOf(loaded, findings, ref) ?? []))],
  }));
