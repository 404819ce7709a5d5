import type { LoadedCase } from '~/app/case.server';
import { FACTS, factOf } from '~/lib/explanations/facts';
import { FACT_IDS, type FactId } from '~/lib/explanations/fact';
import { expectationPath, judgementTable, witnessPath } from '~/lib/explanations/judgement-table';
import { EXPLANATIONS } from '~/lib/explanations';

export type JudgementRow = {
  readonly path: string;
  readonly what: string;
  /** As delivered. */
  readonly value: number;
  readonly reason: string;
  readonly changed: { readonly value: number; readonly reason: string } | null;
};

const RULES = 'rules';

/** The judgements about one fact, or the rules that hold for all of them. */
export function judgementsView({ record }: LoadedCase, about: string | null) {
  const fact = FACT_IDS.find((id) => id === about) ?? null;
  const paths = fact === null ? null : pathsOf(fact);
  const rows = judgementTable()
    .filter(({ path, group }) => (paths === null ? group === 'rule' : paths.has(path)))
    .map(({ path, what, value, reason }): JudgementRow => {
      const change = record.judgementChanges.findLast((one) => one.path === path);
      return {
        path,
        what,
        value,
        reason,
        changed: change ? { value: change.value, reason: change.reason } : null,
      };
    });
  return {
    about: fact ?? RULES,
    title: fact === null ? 'Rules for all facts' : factOf(fact).name,
    definition: fact === null ? null : factOf(fact).definition,
    rows,
    topics: [
      { id: RULES, name: 'Rules for all facts' },
      ...FACTS.map(({ id, name }) => ({ id: id as string, name })),
    ],
    changes: record.judgementChanges.length,
  };
}

function pathsOf(fact: FactId): ReadonlySet<string> {
  const expectations = EXPLANATIONS.map(({ id }) => expectationPath(id, fact));
  const witnesses = new Set(factOf(fact).witnesses.map(({ id }) => witnessPath(id, '', true).split('/')[1]));
  return new Set([
    ...expectations,
    ...judgementTable().flatMap(({ path }) => {
      const [kind, witness] = path.split('/');
      return kind === 'witness' && witnesses.has(witness) ? [path] : [];
    }),
  ]);
}
