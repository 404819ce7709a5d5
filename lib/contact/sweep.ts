import { contactAt, type ContactOptions, type ContactState, type RollTreatment } from './state';
import { type ContactSetup } from './setup';

/** Contact over a range of lateral shifts, in the order asked. */
export type ContactSweep = {
  readonly roll: RollTreatment;
  readonly states: readonly ContactState[];
  /** Shifts at which a wheel was no longer over its rail, with the reason. */
  readonly refused: readonly { readonly shiftMm: number; readonly message: string }[];
};

/** Shifts from one to another at even steps, both ends included; mm. */
export function shiftsBetween(fromMm: number, toMm: number, stepMm: number): Float64Array {
  const steps = Math.max(0, Math.round((toMm - fromMm) / stepMm));
  // Multiplied, not added up, so that the middle of a symmetric sweep is exactly 0.
  return Float64Array.from({ length: steps + 1 }, (_, i) =>
    steps === 0 ? fromMm : (fromMm * (steps - i) + toMm * i) / steps,
  );
}

/** The wheelset moved sideways: `contactAt` at every shift, mm, positive to the right. */
export function contactSweep(
  setup: ContactSetup,
  shiftsMm: ArrayLike<number>,
  options: ContactOptions = {},
): ContactSweep {
  const states: ContactState[] = [];
  const refused: { readonly shiftMm: number; readonly message: string }[] = [];
  for (let i = 0; i < shiftsMm.length; i += 1) {
    const shiftMm = shiftsMm[i]!;
    const state = contactAt(setup, shiftMm, options);
    if (state.ok) states.push(state.value);
    else refused.push({ shiftMm, message: state.message });
  }
  return { roll: options.roll ?? 'solved', states, refused };
}

/** Rise of each wheel's tread reference point from one state to another, mm. */
export const liftBetween = (
  from: ContactState,
  to: ContactState,
): { readonly left: number; readonly right: number } => ({
  left: to.left.datumHeightMm - from.left.datumHeightMm,
  right: to.right.datumHeightMm - from.right.datumHeightMm,
});
