import type { Disturbance } from '../case/record';

/** Why readings and outlines feed no finding. */
export type LeftOutWhy = Exclude<Disturbance, 'undisturbed'>;

export const LEFT_OUT_WORDS: Readonly<Record<LeftOutWhy, string>> = {
  disturbed: 'disturbed by the derailment',
  repaired: 'repaired since',
  notSaid: 'not said whether disturbed',
};

/** Undisturbed when the thing itself or what it is of says so and neither says otherwise. */
export function stateOf(said: Disturbance, subjectSaid: Disturbance): Disturbance {
  if (said === 'disturbed' || subjectSaid === 'disturbed') return 'disturbed';
  if (said === 'repaired' || subjectSaid === 'repaired') return 'repaired';
  return said === 'undisturbed' || subjectSaid === 'undisturbed' ? 'undisturbed' : 'notSaid';
}
