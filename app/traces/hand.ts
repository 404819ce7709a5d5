import type { HandPlacing } from '~/lib/case/trace';

/** Boxes in which a placing is corrected by hand, as typed. */
export const HAND_BOXES = ['dx', 'dy', 'angle', 'mirror', 'reason'] as const;
export type HandBoxes = Readonly<Record<(typeof HAND_BOXES)[number], string>>;

/** What the boxes mean; `reason` is missing from a trial. */
export type HandTrial = Omit<HandPlacing, 'reason'> & { readonly mirrored: boolean };
