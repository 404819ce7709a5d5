import type { Dimension, UnitSystem, Unit } from './unit';

/** The things a reading can be about. Each is one kind of record in the case. */
export const SUBJECT_KINDS = [
  'case',
  'vehicle',
  'lineStretch',
  'mark',
  'station',
  'wheelset',
  'wheelDefect',
  'truck',
  'rail',
  'turnout',
] as const;
export type SubjectKind = (typeof SUBJECT_KINDS)[number];

/** How somebody takes this reading, in the tool's own words. `figure` names a drawing in lib/figures/howto. */
export type HowTo = {
  readonly take: string;
  readonly why: string;
  /** Ids of the explanations it bears on, from lib/explanations. */
  readonly bearsOn: readonly string[];
  readonly spoiledBy: string;
  readonly figure?: string;
};

/** A place on the subject where the quantity is read: a side, a clock position, an end. */
export type Slot = { readonly id: string; readonly label: string };

type Shared = {
  readonly id: string;
  readonly name: string;
  /** Short heading for a column of a sheet or a table. */
  readonly short: string;
  readonly subject: SubjectKind;
  /** Empty: read once per subject. */
  readonly slots: readonly Slot[];
  /** Further slots may be added by the user, such as a clock angle in whole degrees. */
  readonly openSlots?: 'clockDegrees';
};

export type Measure = Shared & {
  readonly kind: 'measure';
  readonly dimension: Dimension;
  /** The unit a bare number is taken in, per unit system. */
  readonly bareUnit: Readonly<Record<UnitSystem, Unit>>;
  /** What is physically possible, in the dimension's canonical unit; outside is refused. */
  readonly possible: readonly [number, number];
  /** What is usual; outside is kept, with a question back to the user. Canonical unit. */
  readonly usual: readonly [number, number];
  /** Ordinary instrument when none is named: half-width of its resolution, canonical unit, with the source of that. */
  readonly defaultResolution: { readonly halfWidth: number; readonly source: string };
  /**
   * What the reading could be when nobody took it: the declared range a computation draws from
   * for comparison (trade: "what was measured counts, not what was assumed"). Canonical unit.
   */
  readonly reference: { readonly low: number; readonly high: number; readonly source: string };
};

export type Count = Shared & { readonly kind: 'count'; readonly possible: readonly [number, number] };

/** A go/no-go gauge: pass or fail of one named check, never a number. */
export type GoNoGo = Shared & { readonly kind: 'goNoGo'; readonly check: string };

export type Choice = Shared & {
  readonly kind: 'choice';
  readonly choices: readonly { readonly id: string; readonly label: string }[];
};

/** Something looked for. The four states are different records and never merged. */
export type Observation = Shared & { readonly kind: 'observation'; readonly question: string };

export type Quantity = Measure | Count | GoNoGo | Choice | Observation;

/** The screens of a case on which readings are entered. */
export type ScreenId = 'scene' | 'train' | 'marks' | 'track' | 'wheels' | 'rails' | 'turnout';

/** Readings taken together, shown under one heading with one "how to take this reading". */
export type QuantityGroup = {
  readonly id: string;
  readonly name: string;
  readonly screen: ScreenId;
  readonly subject: SubjectKind;
  readonly howTo: HowTo;
  /** Asked only where this field of the case says so. */
  readonly onlyWhere?: { readonly field: string; readonly is: string };
  readonly quantities: readonly Quantity[];
};

export const OBSERVATION_STATES = ['seen', 'notFound', 'couldNotTell'] as const;
/** `notLooked` is never stored: it is the absence of a record. */
export type ObservationState = (typeof OBSERVATION_STATES)[number];

export const OBSERVATION_LABELS: Readonly<Record<ObservationState | 'notLooked', string>> = {
  seen: 'Seen',
  notFound: 'Looked for and not found',
  couldNotTell: 'Could not tell',
  notLooked: 'Not looked for',
};
