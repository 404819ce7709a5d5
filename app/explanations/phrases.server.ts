import type { LoadedCase } from '~/app/case.server';
import type { Sentence } from '~/lib/explanations/argument';
import type { Ref } from '~/lib/explanations/witness';
import type { Finding } from '~/lib/findings/finding';

/** A piece of a sentence and the places in the app it rests on. */
export type Phrase = { readonly text: string; readonly hrefs: readonly string[] };

const PART_OF_FINDING: Readonly<Record<Finding['part'], string>> = {
  track: 'track',
  wheels: 'wheels',
  rails: 'rails',
  turnout: 'turnout',
  train: 'train',
  mechanics: 'rails',
};

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
    case 'mark':
      return `${at}/records/mark/${id}`;
    case 'finding': {
      const part = findings.get(id)?.part;
      return part === undefined ? null : `${at}/${PART_OF_FINDING[part]}#${id}`;
    }
    case 'judgement':
      return `${at}/explanations/judgements`;
    case 'fact':
      return `#fact-${id}`;
    case 'explanation':
      return `#explanation-${id}`;
    case 'method':
      return '/methods';
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
