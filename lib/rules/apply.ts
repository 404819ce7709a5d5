import type { LimitCheck } from '../findings/finding';
import { normalUpperTail } from './normal';
import { RULE_QUANTITIES, type RuleQuantityId } from './rule-quantity';
import type { Answered, Place, RuleClass, RuleCondition, RuleLimit, RuleSet } from './rule-set';

/** A limit with the number it has in one class. */
export type ClassLimit = {
  readonly limit: RuleLimit;
  readonly classId: string;
  readonly classLabel: string;
  /** mm (counts: a number). */
  readonly value: number;
  readonly printed: string;
};

export const ruleClass = (ruleSet: RuleSet, classId: string): RuleClass | undefined =>
  ruleSet.classes.find((each) => each.id === classId);

/** Whether the cant there is above the one from which on the limit holds. */
const hasMuchCant = ({ lessM, perMm }: NonNullable<RuleLimit['cantOver']>, { bend }: Place): boolean =>
  bend !== undefined && bend.cantMm > (bend.radiusM - lessM) / perMm;

const appliesAt = (limit: RuleLimit, place: Place): boolean => {
  if (limit.cantOver !== undefined && !(place.onCurve && hasMuchCant(limit.cantOver, place))) return false;
  if (limit.unbalanceOverMm !== undefined && (place.qualifiedUnbalanceMm ?? 0) <= limit.unbalanceOverMm)
    return false;
  const likeSharpCurve = place.inTurnout === true && limit.curveOverDegrees !== undefined;
  if (limit.applies === 'curve' && !place.onCurve && !likeSharpCurve) return false;
  if (limit.applies === 'tangent' && place.onCurve) return false;
  const sharp = place.inTurnout ? Infinity : place.onCurve ? place.curveDegrees : 0;
  // Sharpness not known: both are returned, so that neither is passed over in silence.
  if (sharp === undefined) return true;
  if (limit.curveUpToDegrees !== undefined && sharp > limit.curveUpToDegrees) return false;
  if (limit.curveOverDegrees !== undefined && sharp <= limit.curveOverDegrees) return false;
  return true;
};

/** What was answered to a choice of the catalogue; null when nothing was. */
export type AnswerTo = (quantity: string) => string | null;

const isAnswered = ({ quantity, answers }: Answered, answerTo: AnswerTo): boolean =>
  answers.includes(answerTo(quantity) ?? '');

/** Whether a limit or condition that hangs on answers holds, given those. */
export const holdsGiven = (
  rule: { readonly onlyIf?: Answered; readonly notIf?: Answered },
  answerTo: AnswerTo,
): boolean =>
  (rule.onlyIf === undefined || isAnswered(rule.onlyIf, answerTo)) &&
  (rule.notIf === undefined || !isAnswered(rule.notIf, answerTo));

/**
 * The limits of one class on one quantity at one place; usually one, two where a least and a most
 * are given, none where the class has no such limit or the class is not in the set. Limits that hang
 * on an answer come as `answerTo` says; nothing is answered when it is not given.
 */
export const limitsFor = (
  ruleSet: RuleSet,
  classId: string,
  quantity: RuleQuantityId,
  place: Place,
  answerTo: AnswerTo = () => null,
): readonly ClassLimit[] => {
  const found = ruleClass(ruleSet, classId);
  if (!found) return [];
  return ruleSet.limits.flatMap((limit) => {
    const value = limit.perClass[classId];
    if (limit.quantity !== quantity || value === null || value === undefined) return [];
    if (!appliesAt(limit, place) || !holdsGiven(limit, answerTo)) return [];
    return [{ limit, classId, classLabel: found.label, value, printed: limit.asPrinted[classId] ?? '' }];
  });
};

/** The answer that says nothing either way. */
const COULD_NOT_TELL = 'couldNotTell';

/** What an answer says of a condition: met, not met, or null where it says nothing. */
export const meets = (condition: RuleCondition, answer: string | null): boolean | null =>
  answer === null || answer === COULD_NOT_TELL ? null : !condition.notMet.includes(answer);

/** The conditions of one class, those left away that hang on an answer given otherwise. */
export const conditionsFor = (
  ruleSet: RuleSet,
  classId: string,
  answerTo: AnswerTo,
): readonly RuleCondition[] =>
  (ruleSet.conditions ?? []).filter(
    (condition) => condition.classes.includes(classId) && holdsGiven(condition, answerTo),
  );

/**
 * A limit over another base than its own, in mm over `baseM`: l · min(amount / base, mm / l + mmPerM);
 * null where the limit is not given over that base.
 */
export function overBase(limit: ClassLimit, baseM: number): ClassLimit | null {
  const { base, overBase: by } = limit.limit;
  if (by === undefined || base === undefined) return null;
  if (baseM < by.fromM - 1e-3 || baseM > by.toM + 1e-3) return null;
  const value = round(baseM * Math.min(limit.value / base.lengthM, by.mm / baseM + by.mmPerM));
  return { ...limit, value, printed: `${Number(value.toFixed(1))} mm over ${Number(baseM.toFixed(2))} m` };
}

/** Finer than any instrument; keeps 57.75 in added up from parts equal to 57.75 in as printed. */
const round = (mm: number): number => Math.round(mm * 1e6) / 1e6;

/** How far the value lies beyond the limit, mm; negative when within it. */
export const excessBeyond = (value: number, limit: ClassLimit): number => {
  const magnitude = RULE_QUANTITIES[limit.limit.quantity].compare === 'magnitude';
  const held = magnitude ? Math.abs(value) : value;
  return round(limit.limit.sense === 'max' ? held - limit.value : limit.value - held);
};

/** Farther from a limit than this many uncertainties a value is surely on its side: the rest is below 2 in 10¹². */
const SURELY = 7;

const tail = (distance: number, u: number): number => {
  const z = distance / u;
  return z > SURELY ? 0 : z < -SURELY ? 1 : normalUpperTail(z);
};

/**
 * True where `checkLimit` surely finds the value within the limit, with no chance of exceeding it: by
 * far the most common answer of a long sheet, and the same whatever the value. Units as there.
 */
export const isSurelyWithin = (value: number, u: number, limit: ClassLimit): boolean => {
  const { sense, quantity } = limit.limit;
  const most = RULE_QUANTITIES[quantity].compare === 'magnitude' ? Math.abs(value) : value;
  const left = sense === 'max' ? limit.value - most : value - limit.value;
  return left > LEAST_MM && left > SURELY * u;
};

/** Twice what limits are rounded to. */
const LEAST_MM = 2e-6;

/**
 * Holds a value against a limit. Value and standard uncertainty u (k = 1, u ≥ 0) in mm, or counts.
 * `exceeded` looks at the value alone; `probabilityExceeds` is the share of a normal distribution
 * N(value, u) that the limit condemns, and 0 or 1 when u = 0 or the value lies more than 7 u from the
 * limit. Where a deviation to either side counts, both tails are added. "Or more" limits condemn their
 * own value, "more than" limits do not.
 * Source: conformance probability with a normal distribution, JCGM 106:2012, clause 7 (clause from memory).
 */
export const checkLimit = (input: {
  readonly value: number;
  readonly u: number;
  readonly limit: ClassLimit;
}): LimitCheck => {
  const { value, u, limit } = input;
  const { sense, strict, quantity, citation, source } = limit.limit;
  const excess = excessBeyond(value, limit);
  const exceeded = strict ? excess > 0 : excess >= 0;
  const beyond =
    sense === 'min'
      ? tail(value - limit.value, u)
      : RULE_QUANTITIES[quantity].compare === 'magnitude'
        ? tail(limit.value - value, u) + tail(limit.value + value, u)
        : tail(limit.value - value, u);
  return {
    name: `${RULE_QUANTITIES[quantity].name}, ${limit.classLabel}`,
    citation,
    sense,
    limit: limit.value,
    exceeded,
    probabilityExceeds: u > 0 ? Math.min(1, beyond) : exceeded ? 1 : 0,
    source,
  };
};
