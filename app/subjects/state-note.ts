import type { Entity } from '~/lib/case/record';

/** Why readings of the thing feed no finding, or only some; null when it is said to be undisturbed. */
export function stateNote({ fields }: Entity): string | null {
  switch (fields.disturbance) {
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
