/** Boxes of the form that says who took an outline, when, with what and in which state. */
export const SAID_BOXES = [
  'person',
  'instrument',
  'takenAt',
  'justNow',
  'disturbance',
  'note',
  'distance',
  'mirrored',
  'plumb',
  'behind',
] as const;
export type SaidBoxes = Readonly<Record<(typeof SAID_BOXES)[number], string>>;
