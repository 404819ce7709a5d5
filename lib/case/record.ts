import type { SubjectKind } from '../readings/quantity';
import type { OwnShape, Trace } from './trace';

/** Bumped when the shape below changes. */
export const CASE_RECORD_VERSION = 2;

export const DISTURBANCES = ['undisturbed', 'disturbed', 'repaired', 'notSaid'] as const;
export type Disturbance = (typeof DISTURBANCES)[number];

/** How the thing read was chosen. The worst of many is not read as one of many. */
export const SAMPLINGS = ['every', 'worst', 'picked', 'notSaid'] as const;
export type Sampling = (typeof SAMPLINGS)[number];

export type SubjectRef = { readonly kind: SubjectKind; readonly id: string };

/**
 * One reading as somebody took it. `value` is in the canonical unit of the quantity's dimension
 * (counts: the count); `state` holds a go/no-go ('pass' | 'fail'), a choice id, or an
 * ObservationState. Exactly one of the two is set.
 */
export type Reading = {
  readonly id: string;
  readonly subject: SubjectRef;
  readonly quantity: string;
  /** '' when the quantity has no slots. */
  readonly slot: string;
  readonly entered: string;
  readonly unit: string;
  readonly value: number | null;
  readonly state: string | null;
  /** Observations: share of the thing that could be examined, 0 to 1. */
  readonly examined: number | null;
  readonly instrumentId: string | null;
  readonly personId: string | null;
  /** Local date and time at the site, ISO 8601 without zone. */
  readonly takenAt: string | null;
  readonly disturbance: Disturbance;
  readonly sampling: Sampling;
  readonly note: string;
  /** The reading this one corrects or withdraws, and why. */
  readonly replaces: string | null;
  readonly reason: string | null;
  /** True: this row withdraws the one it replaces and carries no value of its own. */
  readonly withdrawn: boolean;
  readonly createdAt: string;
};

/** A record of the case other than a reading. Fields are those of its kind in lib/case/kinds. */
export type Entity = {
  readonly id: string;
  readonly order: number;
  readonly fields: Readonly<Record<string, string | number | boolean | null>>;
  readonly removed: { readonly at: string; readonly reason: string } | null;
  readonly createdAt: string;
};

export type Photo = {
  readonly id: string;
  readonly order: number;
  readonly sha256: string;
  readonly fileName: string;
  readonly mime: string;
  readonly bytes: number;
  readonly width: number;
  readonly height: number;
  readonly takenAt: string | null;
  readonly latitude: number | null;
  readonly longitude: number | null;
  readonly caption: string;
  readonly subject: SubjectRef | null;
  readonly personId: string | null;
  readonly removed: { readonly at: string; readonly reason: string } | null;
  readonly createdAt: string;
};

/** Kinds of record that are kept in their own table and edited through one form each. */
export const ENTITY_KINDS = [
  'person',
  'instrument',
  'vehicle',
  'lineStretch',
  'mark',
  'station',
  'wheelset',
  'wheelDefect',
  'truck',
  'rail',
  'turnout',
  'statement',
] as const;
export type EntityKind = (typeof ENTITY_KINDS)[number];

/** The investigator's own words and decisions. */
export type Narrative = {
  readonly summary: string;
  readonly determination: string;
  readonly signatories: string;
};

/** An explanation the investigator sets aside, or keeps, with the reason. */
export type Standing = {
  readonly explanation: string;
  readonly standing: 'excluded' | 'stands';
  readonly reason: string;
  readonly personId: string | null;
  readonly at: string;
};

/** A judgement changed by the investigator: path into the judgement tables, new value, reason. */
export type JudgementChange = {
  readonly path: string;
  readonly value: number;
  readonly reason: string;
  readonly personId: string | null;
  readonly at: string;
};

export type RecorderRun = {
  readonly id: string;
  readonly name: string;
  readonly vehicleId: string | null;
  readonly fileName: string;
  readonly sha256: string;
  readonly rows: number;
  /** Channel id (lib/case/recorder) → unit it was entered in. */
  readonly channels: Readonly<Record<string, string>>;
  readonly clockOffsetS: number;
  readonly note: string;
  readonly removed: { readonly at: string; readonly reason: string } | null;
  readonly createdAt: string;
};

/** Everything known about one case; recorder samples are read separately as typed arrays. */
export type CaseRecord = {
  readonly version: number;
  readonly id: string;
  /** Fields of lib/case/kinds/case.ts. */
  readonly fields: Entity['fields'];
  readonly entities: Readonly<Record<EntityKind, readonly Entity[]>>;
  /** All rows, oldest first, replaced and withdrawn ones included; see `currentReadings`. */
  readonly readings: readonly Reading[];
  readonly photos: readonly Photo[];
  readonly recorderRuns: readonly RecorderRun[];
  /** Outlines of wheels, rails and points, in the order they came, removed ones included. */
  readonly traces: readonly Trace[];
  readonly ownShapes: readonly OwnShape[];
  /** The railroad's own limits as entered (lib/rules/railroad-lines); null or absent: none. */
  readonly railroadLimits?: string | null;
  readonly narrative: Narrative;
  readonly standings: readonly Standing[];
  readonly judgementChanges: readonly JudgementChange[];
  readonly createdAt: string;
};
