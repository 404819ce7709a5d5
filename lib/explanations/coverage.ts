import type { ByExplanation, Coverage, Sentence } from './argument';
import { explanationOf } from '.';
import type { Tables } from './judgement-table';
import { say } from './sentences';
import type { WitnessRecord } from './witness';

/** A difference in shares that is named. */
const LOPSIDED = 0.4;

/** An explanation this far behind the background needs no further looking, decibans. */
const FAR_BEHIND = -10;

/** How many of the witnesses that bear on each explanation's own facts have a record. */
export function coverageOf(tables: Tables, records: ReadonlyMap<string, WitnessRecord>): readonly Coverage[] {
  return tables.explanations
    .filter(({ characteristic }) => characteristic.length > 0)
    .map(({ id, characteristic }) => {
      const witnesses = tables.facts
        .filter((fact) => characteristic.includes(fact.id))
        .flatMap((fact) => fact.witnesses)
        .filter((witness) => records.get(witness.id)?.state.kind !== 'notNeeded');
      const recorded = witnesses.filter(({ id: witness }) => {
        const kind = records.get(witness)?.state.kind;
        return kind !== undefined && kind !== 'notLooked';
      });
      return { explanation: id, recorded: recorded.length, of: witnesses.length };
    });
}

/** Names the explanation looked into most and those looked into much less; null when looking was even. */
export function lopsidedOf(coverage: readonly Coverage[], total: ByExplanation): Sentence | null {
  const share = ({ recorded, of }: Coverage): number => (of === 0 ? 0 : recorded / of);
  const most = coverage.reduce<Coverage | null>((a, b) => (a === null || share(b) > share(a) ? b : a), null);
  if (most === null) return null;
  const least = coverage.filter(
    (each) => share(most) - share(each) >= LOPSIDED && total[each.explanation] > FAR_BEHIND,
  );
  if (least.length === 0) return null;
  const text = ({ explanation, recorded, of }: Coverage): string =>
    `${explanationOf(explanation).name.toLowerCase()} (${recorded} of ${of})`;
  return [
    say('Looking was lopsided: most was recorded for '),
    say(text(most), { kind: 'explanation', id: most.explanation }),
    say(', much less for '),
    ...least.map((each, i) =>
      say(`${i === 0 ? '' : ', '}${text(each)}`, { kind: 'explanation', id: each.explanation }),
    ),
    say('.'),
  ];
}
