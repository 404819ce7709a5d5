import type { Source } from '../findings/finding';
import type { RuleQuantityId } from './rule-quantity';

/**
 * One class of track (a speed band where the rules have no classes), or one kind of equipment
 * in a set about wheels and trucks. Track classes stand from the slowest to the fastest.
 */
export type RuleClass = {
  readonly id: string;
  readonly label: string;
  /** Highest speed the class allows, m/s; null: none allowed. Equipment classes have neither. */
  readonly freightSpeedMs?: number | null;
  readonly passengerSpeedMs?: number | null;
  /** Holds only where the owner has so designated the track: never reached by measuring. */
  readonly designatedOnly?: boolean;
  /** Equipment: vehicle types (as in the case record) it covers. */
  readonly vehicleTypes?: readonly string[];
};

/** Where a limit is compared, as far as it changes which limit applies. */
export type Place = {
  readonly onCurve: boolean;
  /** Sharpness in degrees of curve, when known. */
  readonly curveDegrees?: number;
  readonly inTurnout?: boolean;
};

export type RuleLimit = {
  /** Unique within the set. */
  readonly id: string;
  readonly quantity: RuleQuantityId;
  readonly sense: 'max' | 'min';
  /**
   * true: only a value beyond the limit is condemned ("may not be more than", "less than").
   * false: the limit itself is condemned too ("or more", "or less").
   */
  readonly strict: boolean;
  readonly applies: 'tangent' | 'curve' | 'both';
  /** Only on curves of at most this sharpness, and never in a turnout. Degrees of curve. */
  readonly curveUpToDegrees?: number;
  /** Only on curves sharper than this, and in turnouts. Degrees of curve. */
  readonly curveOverDegrees?: number;
  /** Class id → limit in mm (counts: a number); null: the class has no such limit. One entry per class. */
  readonly perClass: Readonly<Record<string, number | null>>;
  /** The same as the rule prints it: class id → text. */
  readonly asPrinted: Readonly<Record<string, string>>;
  /** Length the quantity is taken over: a chord, or any two points within it. */
  readonly base?: {
    readonly kind: 'chord' | 'within';
    readonly lengthM: number;
    /** Are two points exactly that far apart compared? */
    readonly includesExact: boolean;
  };
  /** What else must hold before the comparison is made; for the reader and the caller. */
  readonly onlyWhere?: string;
  /** Exceeding it restricts speed and does not change the class. */
  readonly consequence?: { readonly speedMs: number; readonly text: string };
  readonly citation: string;
  readonly source: Source;
  readonly note?: string;
};

/** A way of applying the rules that the rules themselves leave open, or that is easily missed. */
export type Convention = { readonly id: string; readonly text: string; readonly source: Source };

export type RuleSet = {
  readonly id: string;
  readonly name: string;
  readonly jurisdiction: string;
  /** Which text the numbers were taken from. */
  readonly edition: string;
  readonly notes: readonly string[];
  readonly kind: 'track' | 'equipment';
  readonly classes: readonly RuleClass[];
  readonly limits: readonly RuleLimit[];
  readonly conventions: readonly Convention[];
  /** Track sets: the set whose wheel and truck limits go with it. */
  readonly equipmentSet?: string;
  /** Maximum speed on a curve: V = √((Ea + Eu) / (c·D)), V in mph, Ea and Eu in inches, D in degrees. */
  readonly curvingSpeed?: {
    readonly coefficient: number;
    /** Cant deficiency every vehicle is qualified for, mm. */
    readonly qualifiedUnbalanceMm: number;
    /** Elevation and curvature are averaged over this length, or over the whole body of a shorter curve. */
    readonly averagedOverM: number;
    readonly averagedPoints: number;
    readonly citation: string;
    readonly source: Source;
  };
};
