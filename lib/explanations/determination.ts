import type { CaseRecord } from '../case/record';
import type { Argument, Sentence } from './argument';
import { EXPLANATIONS, explanationOf } from '.';
import { OTHER_EXPLANATION_IDS, type ExplanationId, type OtherExplanationId } from './explanation';
import { say } from './sentences';

export type Chosen = ExplanationId | OtherExplanationId;

export type DeterminationCheck = {
  readonly kind: 'notSaid' | 'carried' | 'notCarried' | 'against' | 'notWeighed';
  readonly sentence: Sentence;
};

/** The one explanation the investigator lets stand; null when none or several do. */
export function chosenExplanation(record: CaseRecord): Chosen | null {
  const latest = new Map(record.standings.map((standing) => [standing.explanation, standing] as const));
  const ids: readonly Chosen[] = [...EXPLANATIONS.map(({ id }) => id), ...OTHER_EXPLANATION_IDS];
  const kept = ids.filter((id) => latest.get(id)?.standing === 'stands');
  return kept.length === 1 ? (kept[0] ?? null) : null;
}

/**
 * Whether the evidence carries the explanation the investigator lets stand. The determination is
 * the investigator's; this says only where evidence and determination meet or differ.
 */
export function determinationCheck(argument: Argument, chosen: Chosen | null): DeterminationCheck {
  if (chosen === null) {
    return {
      kind: 'notSaid',
      sentence: [
        say(
          'No single explanation is recorded as standing, so there is nothing to hold the evidence against.',
        ),
      ],
    };
  }
  const other = argument.others.find(({ id }) => id === chosen);
  if (other !== undefined) {
    return {
      kind: 'notWeighed',
      sentence: [
        say(other.name, { kind: 'explanation', id: other.id }),
        say(
          ' is not weighed by number here: it rests on the reasons given and on the exclusion of the others.',
        ),
      ],
    };
  }
  const id = chosen as ExplanationId;
  const name = say(explanationOf(id).name, { kind: 'explanation', id });
  const { verdict } = argument;
  if (verdict.kind === 'distinguishable' && verdict.leader === id) {
    return { kind: 'carried', sentence: [say('The evidence recorded carries it: '), ...verdict.sentence] };
  }
  if (verdict.kind === 'distinguishable') {
    return {
      kind: 'against',
      sentence: [say('The evidence recorded speaks against '), name, say(': '), ...verdict.sentence],
    };
  }
  return {
    kind: 'notCarried',
    sentence: [say('The evidence recorded does not by itself carry '), name, say('. '), ...verdict.sentence],
  };
}
