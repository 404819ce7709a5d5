import type { LimitCheck } from '../findings/finding';
import {
  checkLimit,
  conditionsFor,
  excessBeyond,
  limitsFor,
  meets,
  overBase,
  type AnswerTo,
  type ClassLimit,
} from './apply';
import { RULE_QUANTITIES, type RuleQuantityId } from './rule-quantity';
import type { Place, RuleCondition, RuleSet } from './rule-set';

/** A value at a station: mm (counts: a number) with its standard uncertainty, k = 1. */
export type NamedValue = {
  readonly quantity: RuleQuantityId;
  readonly value: number;
  readonly u: number;
  /** Length it was taken over, m, where the limit depends on that. */
  readonly baseM?: number | undefined;
  /** How the track bends where it was taken, where the limit depends on that. */
  readonly bend?: Place['bend'];
};

/** An answer to a choice of the catalogue; `slot` where it was asked of each side. */
export type NamedAnswer = { readonly quantity: string; readonly answer: string; readonly slot?: string };

/** A condition that an answer does not meet. */
export type Unmet = {
  readonly classId: string;
  readonly condition: RuleCondition;
  readonly answer: NamedAnswer;
};

/** A limit that the value does not meet, as a list of exceptions prints it. */
export type RuleException = {
  readonly classId: string;
  readonly quantity: RuleQuantityId;
  readonly value: number;
  readonly u: number;
  /** How far beyond the limit, mm; 0 where the limit's own value is condemned. */
  readonly excess: number;
  readonly probability: number;
  readonly limit: ClassLimit;
  readonly check: LimitCheck;
};

export type ClassMet = {
  /** Highest class whose limits all the values meet; null: not even the lowest, or nothing could be compared. */
  readonly highest: string | null;
  /** Per class, lowest first: is it met, by which limits not, and every comparison made. */
  readonly classes: readonly {
    readonly classId: string;
    readonly met: boolean;
    readonly exceptions: readonly RuleException[];
    readonly unmet: readonly Unmet[];
    readonly checks: readonly LimitCheck[];
  }[];
  /** Exceptions that restrict speed and leave the class as it is. */
  readonly speedExceptions: readonly RuleException[];
  /** Conditions that an answer said something of: how many, in any class. */
  readonly answered: number;
  /** Quantities held against at least one limit: the class is met as far as these go and no further. */
  readonly compared: readonly RuleQuantityId[];
  /** Quantities given for which the set has no limit at this place. */
  readonly notCompared: readonly RuleQuantityId[];
};

const compare = (
  ruleSet: RuleSet,
  classId: string,
  values: readonly NamedValue[],
  place: Place,
  answerTo: AnswerTo,
) =>
  values.flatMap((named) =>
    limitsFor(ruleSet, classId, named.quantity, { ...place, bend: named.bend }, answerTo).flatMap(
      (general) => {
        const limit = named.baseM === undefined ? general : overBase(general, named.baseM);
        if (limit === null) return [];
        const check = checkLimit({ value: named.value, u: named.u, limit });
        const excess = excessBeyond(named.value, limit);
        return [{ ...named, classId, limit, check, excess, probability: check.probabilityExceeds }];
      },
    ),
  );

/** What the answers say of the conditions of a class. */
const judge = (
  ruleSet: RuleSet,
  classId: string,
  answers: readonly NamedAnswer[],
  answerTo: AnswerTo,
): readonly (Unmet & { readonly met: boolean })[] =>
  conditionsFor(ruleSet, classId, answerTo).flatMap((condition) =>
    answers
      .filter(({ quantity }) => quantity === condition.quantity)
      .flatMap((answer) => {
        const met = meets(condition, answer.answer);
        return met === null ? [] : [{ classId, condition, answer, met }];
      }),
  );

/**
 * The highest class whose limits are all met by the values of one station (or one turnout, one
 * wheelset), with the exceptions of every class. Values in mm, counts as numbers, u ≥ 0. A class
 * that holds only by designation counts only if it is the one `designated`. Conditions are judged by
 * the `answers`; one not answered says nothing. A set of equipment
 * limits has kinds, not an order of classes: use `limitsFor` and `checkLimit` there.
 * Reclassification to the next lower class for which all requirements are met: 49 CFR 213.9(b).
 */
export const highestClassMet = (
  ruleSet: RuleSet,
  values: readonly NamedValue[],
  place: Place,
  options: { readonly designated?: string; readonly answers?: readonly NamedAnswer[] } = {},
): ClassMet => {
  const { designated, answers = [] } = options;
  const answerTo: AnswerTo = (quantity) => answers.find((each) => each.quantity === quantity)?.answer ?? null;
  const considered = ruleSet.classes.filter((each) => !each.designatedOnly || each.id === designated);
  const results = considered.map((each) => {
    const comparisons = compare(ruleSet, each.id, values, place, answerTo);
    const failed = comparisons.filter((c) => c.check.exceeded);
    const judged = judge(ruleSet, each.id, answers, answerTo);
    return {
      classId: each.id,
      comparisons,
      judged,
      unmet: judged.filter(({ met, condition }) => !met && !condition.consequence),
      exceptions: failed.filter((c) => !c.limit.limit.consequence),
      speedExceptions: failed.filter((c) => c.limit.limit.consequence),
    };
  });
  const firstNotMet = results.findIndex((r) => r.exceptions.length + r.unmet.length > 0);
  const metCount = firstNotMet < 0 ? results.length : firstNotMet;
  const comparedSet = new Set(results.flatMap((r) => r.comparisons.map((c) => c.quantity)));
  const answered = new Set(results.flatMap((r) => r.judged.map(({ condition }) => condition.id))).size;
  const given = [...new Set(values.map((v) => v.quantity))];
  const speedById = new Map(
    results.flatMap((r) => r.speedExceptions.map((e) => [`${e.limit.limit.id} ${e.value}`, e] as const)),
  );
  return {
    highest: comparedSet.size + answered === 0 ? null : (results[metCount - 1]?.classId ?? null),
    classes: results.map((r, index) => ({
      classId: r.classId,
      met: index < metCount,
      exceptions: r.exceptions,
      unmet: r.unmet,
      checks: r.comparisons.map((c) => c.check),
    })),
    speedExceptions: [...speedById.values()],
    answered,
    compared: given.filter((q) => comparedSet.has(q)),
    notCompared: given.filter((q) => !comparedSet.has(q)),
  };
};

/** One exception as a line of text: section, what, reading, limit, excess, probability. */
export const describeException = (
  exception: RuleException,
  formatMm: (value: number) => string = (value) => `${value.toFixed(1)} mm`,
): string => {
  const unit = RULE_QUANTITIES[exception.quantity].unit;
  const show = (value: number): string => (unit === 'count' ? String(value) : formatMm(value));
  const bound = exception.limit.limit.sense === 'max' ? 'at most' : 'at least';
  const percent = Math.round(exception.probability * 100);
  const { consequence, onlyWhere } = exception.limit.limit;
  return [
    `${exception.check.citation}: ${exception.check.name}: ${show(exception.value)}`,
    `limit ${bound} ${exception.limit.printed}${onlyWhere ? ` (only where ${onlyWhere})` : ''}`,
    `beyond it by ${show(exception.excess)}`,
    `probability that the limit is exceeded ${percent} %`,
    ...(consequence ? [consequence.text] : []),
  ].join('; ');
};
