import type { Argument } from '../../explanations/argument';
import { TABLES } from '../../explanations/judgement-table';
import type { MarginWitness } from '../../explanations/witness';
import { SCALE_SOURCE, WHY_CAPPED } from '../../explanations/words';
import type { Finding, Method } from '../../findings/finding';

/** How the argument itself is made; its sentences refer to these by id. */
const WEIGHING_METHODS: readonly Method[] = [
  {
    id: 'weighing',
    name: 'Weight of evidence between explanations',
    formula:
      'Λ(f) = Π P(witness | f) over the witnesses of a fact; L(H) = Σ over f of P(f | H)·Λ(f); L′(H) = (1 − ε)·L(H) + ε·L(0); weight of H against H′ = 10·log10 of L′(H)/L′(H′), added over the facts, in decibans; L(0) is “something else”, whose expectations are how common each fact is where nothing came off',
    validRange:
      'ε = 0.05 unless changed: one record in twenty is taken as wrong. The weight of a fact never exceeds how differently the explanations expect it, however many witnesses it has.',
    sources: [
      {
        text: 'I. J. Good, Probability and the Weighing of Evidence (1950): weight of evidence in decibans',
        status: 'published',
      },
      { text: 'The probabilities are those of appendix C', status: 'engineering judgement' },
    ],
  },
  {
    id: 'widened-judgements',
    name: 'Every judgement moved by up to a factor of two',
    formula:
      'All probabilities of the tables are drawn anew around their values, the odds moved by up to a factor of two either way, and everything is weighed again; words are taken from the 10th percentile of the lead',
    validRange: 'Distinguishable is said only where the leader stays ahead in nine of ten draws.',
    sources: [{ text: 'Size of the factor and share of draws asked', status: 'engineering judgement' }],
  },
  {
    id: 'verbal-scale',
    name: 'Words for a weight of evidence',
    formula:
      'Likelihood ratio 2 to 10: weak support; 10 to 100: moderate; 100 to 1,000: moderately strong; 1,000 to 10,000: strong; above that: very strong',
    validRange: WHY_CAPPED,
    sources: [SCALE_SOURCE],
  },
  {
    id: 'uncertainty',
    name: 'Uncertainty of a reading',
    formula:
      'u = a/√3, a the half-width of the instrument’s resolution or of the writing, whichever is coarser; combined by root sum of squares; U = k·u with k = 2',
    validRange: 'Readings of undisturbed things, each by an instrument used as it is meant to be.',
    sources: [
      {
        text: 'JCGM 100:2008 (GUM), 4.3.7 (a/√3), 5.1.2 (root sum of squares), 6.3.3 (k = 2), 7.2.6 (digits)',
        status: 'published',
      },
    ],
  },
];

const marginMethod = ({ id, name, formula, sources, assumed, inputs, unit }: MarginWitness): Method => ({
  id: `margin:${id}`,
  name: `${name}, drawn for the argument`,
  formula: `${formula}; in ${unit}`,
  validRange: `Drawn from ${inputs.length} key inputs as measured and once more from their reference ranges; the argument counts only what differs between the two (λ = q/π0).`,
  sources: [...sources, ...assumed.map(({ source }) => source)],
});

/** Methods the report uses, each once: of the printed findings, of the margins drawn, of the weighing. */
export function methodsUsed(
  findings: readonly Finding[],
  argument: Argument,
  ofShapes: readonly Method[] = [],
): readonly Method[] {
  const byId = new Map<string, Method>();
  const margins = new Map(
    TABLES.facts.flatMap(({ witnesses }) =>
      witnesses.flatMap((each) => (each.kind === 'margin' ? [[each.id, each] as const] : [])),
    ),
  );
  const drawn = argument.facts.flatMap(({ witnesses }) =>
    witnesses.flatMap(({ witness, state }) => {
      const margin = state.kind === 'outcome' ? margins.get(witness) : undefined;
      return margin === undefined ? [] : [marginMethod(margin)];
    }),
  );
  for (const method of [
    ...findings.map((finding) => finding.method),
    ...ofShapes,
    ...drawn,
    ...WEIGHING_METHODS,
  ]) {
    if (!byId.has(method.id)) byId.set(method.id, method);
  }
  return [...byId.values()];
}
