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
  /** Radius, m, and cant, mm, outer rail high positive, where both are known. */
  readonly bend?: { readonly radiusM: number; readonly cantMm: number } | undefined;
  /** Cant deficiency the equipment is qualified for, mm; not known: the ordinary one of the set. */
  readonly qualifiedUnbalanceMm?: number;
};

/** An answer to a choice of the catalogue, as far as it decides which limit or condition holds. */
export type Answered = { readonly quantity: string; readonly answers: readonly string[] };

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
  /** Only on curves with a cant, mm, above (radius, m − `lessM`) / `perMm`; not known: it does not hold. */
  readonly cantOver?: { readonly lessM: number; readonly perMm: number };
  /** Only for operations at a qualified cant deficiency above this, mm. */
  readonly unbalanceOverMm?: number;
  /** Only where this was so answered; not answered: it does not hold. */
  readonly onlyIf?: Answered;
  /** Not where this was so answered. */
  readonly notIf?: Answered;
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
  /**
   * The amounts hold over `base`; over another base l between `fromM` and `toM` the limit is
   * l · min(amount / base, mm / l + mmPerM).
   */
  readonly overBase?: {
    readonly fromM: number;
    readonly toM: number;
    readonly mm: number;
    readonly mmPerM: number;
  };
  /** What else must hold before the comparison is made; for the reader and the caller. */
  readonly onlyWhere?: string;
  /** Exceeding it restricts speed and does not change the class. */
  readonly consequence?: { readonly speedMs: number; readonly text: string };
  readonly citation: string;
  readonly source: Source;
  readonly note?: string;
  /** The set it was taken from, where a set is put together from two. */
  readonly from?: string;
};

/**
 * A requirement without a figure: some answers to a choice of the catalogue do not meet it. An answer
 * of “could not tell” says nothing.
 */
export type RuleCondition = {
  /** Unique among the limits and conditions of the set. */
  readonly id: string;
  /** What the rule wants, in words. */
  readonly wants: string;
  /** A choice of the catalogue, with the answers that do not meet it. */
  readonly quantity: string;
  readonly notMet: readonly string[];
  /** Ids of the classes it holds for. */
  readonly classes: readonly string[];
  readonly onlyIf?: Answered;
  /** Not meeting it restricts speed and does not change the class. */
  readonly consequence?: { readonly speedMs: number; readonly text: string };
  readonly citation: string;
  readonly source: Source;
  readonly note?: string;
  readonly from?: string;
};

/**
 * Two deviations of the outer rail at one place held together: factor·|a/A + p/P| may not be more than 1.
 * a: alinement, outward positive; p: profile, down positive; A and P: the limits on each that hold
 * above the same cant deficiency, over the same chord.
 */
export type CombinedLimit = {
  readonly id: string;
  readonly alinement: 'alinement62' | 'alinement31';
  readonly profile: 'profile62' | 'profile31';
  readonly factor: number;
  /** Only on curves, for operations at a qualified cant deficiency above this, mm. */
  readonly unbalanceOverMm: number;
  readonly citation: string;
  readonly source: Source;
  readonly note?: string;
};

/** A way of applying the rules that the rules themselves leave open, or that is easily missed. */
export type Convention = { readonly id: string; readonly text: string; readonly source: Source };

export type RuleSet = {
  readonly id: string;
  readonly name: string;
  /** What it is called in a list of sets to choose from; its name when not given. */
  readonly choice?: string;
  readonly jurisdiction: string;
  /** Which text the numbers were taken from. */
  readonly edition: string;
  readonly notes: readonly string[];
  readonly kind: 'track' | 'equipment';
  readonly classes: readonly RuleClass[];
  /**
   * Track sets: the owner designates a class of track, or the authorised speed decides which band
   * holds. Not said: designated.
   */
  readonly classBy?: 'designation' | 'speed';
  /** Where the set says how fast each class may be run. */
  readonly classSpeeds?: { readonly citation: string; readonly source: Source };
  readonly limits: readonly RuleLimit[];
  readonly conditions?: readonly RuleCondition[];
  readonly combined?: readonly CombinedLimit[];
  /** The railroad's own limits: the set whose classes they use, and whose limits where they are silent. */
  readonly basedOn?: { readonly id: string; readonly whereSilent: 'base' | 'nothing' };
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
