/** Names of the boxes of a form of readings. */
export const valueCell = (quantity: string, slot: string): string => `value:${quantity}:${slot}`;
export const examinedCell = (quantity: string): string => `examined:${quantity}`;
export const noteCell = (quantity: string): string => `note:${quantity}`;
/** A place the person names: a clock position in degrees, and what was read there. */
export const placeCell = (quantity: string, n: number): string => `place:${quantity}:${n}`;
export const placedCell = (quantity: string, n: number): string => `placed:${quantity}:${n}`;
export const OPEN_PLACES = [1, 2, 3] as const;

export const SHARED_FIELDS = [
  'instrument',
  'person',
  'takenAt',
  'justNow',
  'disturbance',
  'sampling',
  'note',
] as const;
export type SharedField = (typeof SHARED_FIELDS)[number];

/** A form is about one subject; this tells the answers of several forms on one page apart. */
export const formKey = (subject: { readonly kind: string; readonly id: string }, groups: readonly string[]) =>
  `${subject.kind}:${subject.id}:${groups.join('+')}`;

/** What became of a form of readings. */
export type ReadingsAnswer = {
  readonly form: string;
  readonly saved: number;
  /** Kept, but unusual: asked back. */
  readonly questions: readonly string[];
  readonly errors: Readonly<Record<string, string>>;
  /** What is to stand in the boxes again: refused ones, and the shared fields. */
  readonly values: Readonly<Record<string, string>>;
  /** Changes with each answer, so that the boxes are drawn anew. */
  readonly stamp: string;
};

/** In the address after everything was kept: how many, and by which form. */
export const KEPT_PARAM = 'kept';
