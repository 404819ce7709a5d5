import type { Entity } from '~/lib/case/record';
import type { SubjectKind } from '~/lib/readings/quantity';

/** Why readings of the thing feed no finding, or only some; null when it is said to be undisturbed. */
export function stateNote(kind: SubjectKind, { fields }: Entity): string | null {
  // A defect has no state of its own: the metal in it tells whether it was there before.
  if (kind === 'wheelDefect') {
    return fields.appearance === 'fresh'
      ? 'Fresh metal: it may be damage from the derailment, so its size is not used in findings.'
      : null;
  }
  switch (fields.disturbance) {
    // A vehicle's weight and lengths come from papers: it has no state.
    case undefined:
    case 'undisturbed':
      return null;
    case 'disturbed':
      return 'Disturbed by the derailment: its readings are kept and not used in findings.';
    case 'repaired':
      return 'Repaired since the derailment: its readings are kept and not used in findings.';
    default:
      return 'Not said whether the derailment disturbed it: only readings that say “undisturbed” themselves are used in findings.';
  }
}

/** The same in two words, for a list. */
export function stateWords({ fields }: Entity): string {
  switch (fields.disturbance) {
    case 'undisturbed':
      return 'Undisturbed';
    case 'disturbed':
      return 'Disturbed: not used in findings';
    case 'repaired':
      return 'Repaired: not used in findings';
    default:
      return 'Not said';
  }
}
