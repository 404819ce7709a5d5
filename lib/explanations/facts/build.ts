import type {
  ChoiceWitness,
  CountWitness,
  MarkWitness,
  ObservationWitness,
  PassFailWitness,
} from '../witness';
import { quantityOf } from '../../readings/quantities';

type How = {
  readonly ifTrue: number;
  readonly ifFalse: number;
  readonly reason: string;
  /** True for a condition of track or equipment that the derailment itself would change. */
  readonly needsUndisturbed?: boolean;
};

/** A witness that is one question of the catalogue; its id is the question's. */
export const looked = (
  quantity: string,
  how: How & { readonly orMarks?: readonly string[]; readonly unlessChosen?: string },
): ObservationWitness => ({
  kind: 'observation',
  id: quantity,
  name: quantityOf(quantity).name,
  quantity,
  orMarks: how.orMarks ?? [],
  unlessChosen: how.unlessChosen ?? null,
  needsUndisturbed: how.needsUndisturbed ?? false,
  ifTrue: how.ifTrue,
  ifFalse: how.ifFalse,
  reason: how.reason,
});

/** A witness that is a mark on record. */
export const marked = (
  id: string,
  name: string,
  markTypes: readonly string[],
  how: Omit<How, 'needsUndisturbed'>,
): MarkWitness => ({ kind: 'mark', id, name, markTypes, needsUndisturbed: false, ...how });

/** A go/no-go gauge that failed. */
export const gauged = (
  quantity: string,
  how: How & Pick<PassFailWitness, 'unlessMeasured'>,
): PassFailWitness => ({
  kind: 'passFail',
  id: quantity,
  name: quantityOf(quantity).name,
  quantity,
  unlessMeasured: how.unlessMeasured,
  needsUndisturbed: true,
  ifTrue: how.ifTrue,
  ifFalse: how.ifFalse,
  reason: how.reason,
});

/** One choice of several; outcomes as [choice id, if the fact holds, if not]. */
export const chosen = (
  quantity: string,
  how: {
    readonly on: ChoiceWitness['on'];
    readonly outcomes: readonly (readonly [string, number, number])[];
    readonly reason: string;
  },
): ChoiceWitness => {
  const entry = quantityOf(quantity);
  const label = (id: string): string =>
    (entry.kind === 'choice' ? entry.choices.find((choice) => choice.id === id)?.label : undefined) ?? id;
  return {
    kind: 'choice',
    id: quantity,
    name: entry.name,
    quantity,
    on: how.on,
    needsUndisturbed: true,
    reason: how.reason,
    outcomes: how.outcomes.map(([id, ifTrue, ifFalse]) => ({ id, label: label(id), ifTrue, ifFalse })),
  };
};

/** A count in bands; bands as [from, if the fact holds, if not]. */
export const counted = (
  quantity: string,
  how: { readonly bands: readonly (readonly [number, number, number])[]; readonly reason: string },
): CountWitness => ({
  kind: 'count',
  id: quantity,
  name: quantityOf(quantity).name,
  quantity,
  needsUndisturbed: true,
  reason: how.reason,
  from: how.bands.map(([from]) => from),
  outcomes: how.bands.map(([from, ifTrue, ifFalse], i) => {
    const next = how.bands[i + 1]?.[0];
    const label =
      next === undefined ? `${from} or more` : next - from === 1 ? `${from}` : `${from} to ${next - 1}`;
    return { id: `from${from}`, label, ifTrue, ifFalse };
  }),
});
