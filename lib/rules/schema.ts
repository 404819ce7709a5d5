import { z } from 'zod';
import { findQuantity } from '../readings/quantities';
import { RULE_QUANTITIES, RULE_QUANTITY_IDS, type RuleQuantityId } from './rule-quantity';
import type { Answered, RuleCondition, RuleLimit, RuleSet } from './rule-set';

const text = z.string().trim().min(1);
const slug = z.string().regex(/^[a-z0-9]+(?:[-_.][a-z0-9]+)*$/i, 'Use letters, digits and single dashes.');

const source = z.strictObject({
  text,
  status: z.enum(['published', 'common practice, no source', 'from memory', 'engineering judgement']),
});

const ruleClass = z.strictObject({
  id: slug,
  label: text,
  freightSpeedMs: z.number().positive().nullable().optional(),
  passengerSpeedMs: z.number().positive().nullable().optional(),
  designatedOnly: z.boolean().optional(),
  vehicleTypes: z.array(text).optional(),
});

const answered = z.strictObject({ quantity: text, answers: z.array(text).min(1) });
const consequence = z.strictObject({ speedMs: z.number().positive(), text });

const ruleLimit = z.strictObject({
  id: slug,
  quantity: z.enum(RULE_QUANTITY_IDS as [RuleQuantityId, ...RuleQuantityId[]]),
  sense: z.enum(['max', 'min']),
  strict: z.boolean(),
  applies: z.enum(['tangent', 'curve', 'both']),
  curveUpToDegrees: z.number().positive().optional(),
  curveOverDegrees: z.number().positive().optional(),
  cantOver: z.strictObject({ lessM: z.number().nonnegative(), perMm: z.number().positive() }).optional(),
  unbalanceOverMm: z.number().positive().optional(),
  onlyIf: answered.optional(),
  notIf: answered.optional(),
  perClass: z.record(slug, z.number().positive().nullable()),
  asPrinted: z.record(slug, text),
  base: z
    .strictObject({
      kind: z.enum(['chord', 'within']),
      lengthM: z.number().positive(),
      includesExact: z.boolean(),
    })
    .optional(),
  overBase: z
    .strictObject({
      fromM: z.number().positive(),
      toM: z.number().positive(),
      mm: z.number().positive(),
      mmPerM: z.number().nonnegative(),
    })
    .optional(),
  onlyWhere: text.optional(),
  consequence: consequence.optional(),
  citation: text,
  source,
  note: text.optional(),
  from: text.optional(),
});

const combinedLimit = z.strictObject({
  id: slug,
  alinement: z.enum(['alinement62', 'alinement31']),
  profile: z.enum(['profile62', 'profile31']),
  factor: z.number().positive(),
  unbalanceOverMm: z.number().nonnegative(),
  citation: text,
  source,
  note: text.optional(),
});

const ruleCondition = z.strictObject({
  id: slug,
  wants: text,
  quantity: text,
  notMet: z.array(text).min(1),
  classes: z.array(slug).min(1),
  onlyIf: answered.optional(),
  consequence: consequence.optional(),
  citation: text,
  source,
  note: text.optional(),
  from: text.optional(),
});

/** What is wrong with an answer that a limit or a condition hangs on; '' when nothing is. */
function wrongAnswer({ quantity, answers }: Answered): string {
  const asked = findQuantity(quantity);
  if (asked?.kind !== 'choice') return `“${quantity}” is no choice of the catalogue.`;
  const unknown = answers.find((answer) => !asked.choices.some(({ id }) => id === answer));
  return unknown === undefined ? '' : `“${unknown}” is no answer to ${asked.name.toLowerCase()}.`;
}

const answersOf = (rule: {
  readonly onlyIf?: Answered | undefined;
  readonly notIf?: Answered | undefined;
}): readonly Answered[] => [rule.onlyIf, rule.notIf].filter((each) => each !== undefined);

/** What is wrong with a condition of a set with these classes; '' when nothing is. */
function wrongCondition(condition: RuleCondition, classIds: readonly string[]): string {
  const answers = [{ quantity: condition.quantity, answers: condition.notMet }, ...answersOf(condition)];
  const unknown = condition.classes.find((id) => !classIds.includes(id));
  return [...answers.map(wrongAnswer), unknown === undefined ? '' : `there is no class “${unknown}”.`]
    .filter((each) => each !== '')
    .join(' ');
}

const sameMembers = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((each) => b.includes(each));

/** A faster class never allows what a slower one forbids; without that "highest class met" has no meaning. */
const loosensUpward = (
  limit: Pick<RuleLimit, 'perClass' | 'sense'>,
  classIds: readonly string[],
): boolean => {
  const values = classIds
    .map((id) => limit.perClass[id])
    .filter((value): value is number => typeof value === 'number');
  return values.some((value, i) => {
    const slower = values[i - 1];
    return slower !== undefined && (limit.sense === 'max' ? value > slower : value < slower);
  });
};

/**
 * What every rule set must satisfy, built in or entered by a user: known quantities, one amount per
 * class, printed text beside every amount, unique ids, and limits that tighten from class to class.
 */
export const ruleSetSchema = z
  .strictObject({
    id: slug,
    name: text,
    choice: text.optional(),
    jurisdiction: text,
    edition: text,
    notes: z.array(text),
    kind: z.enum(['track', 'equipment']),
    classes: z.array(ruleClass).min(1),
    classBy: z.enum(['designation', 'speed']).optional(),
    classSpeeds: z.strictObject({ citation: text, source }).optional(),
    limits: z.array(ruleLimit).min(1),
    conditions: z.array(ruleCondition).optional(),
    combined: z.array(combinedLimit).optional(),
    basedOn: z.strictObject({ id: slug, whereSilent: z.enum(['base', 'nothing']) }).optional(),
    conventions: z.array(z.strictObject({ id: slug, text, source })),
    equipmentSet: slug.optional(),
    curvingSpeed: z
      .strictObject({
        coefficient: z.number().positive(),
        qualifiedUnbalanceMm: z.number().nonnegative(),
        averagedOverM: z.number().positive(),
        averagedPoints: z.int().positive(),
        citation: text,
        source,
      })
      .optional(),
  })
  .superRefine((ruleSet, context) => {
    const complain = (message: string): void => context.addIssue({ code: 'custom', message });
    const classIds = ruleSet.classes.map((each) => each.id);
    if (new Set(classIds).size < classIds.length) complain('Two classes have the same id.');
    const conditions = ruleSet.conditions ?? [];
    const ids = [...ruleSet.limits, ...conditions, ...(ruleSet.combined ?? [])].map((each) => each.id);
    if (new Set(ids).size < ids.length) complain('Two limits or conditions have the same id.');
    for (const condition of conditions) {
      const wrong = wrongCondition(condition, classIds);
      if (wrong !== '') complain(`${condition.id}: ${wrong}`);
    }
    for (const limit of ruleSet.limits) {
      const quantity = RULE_QUANTITIES[limit.quantity];
      const aboutTrack = quantity.about === 'track' || quantity.about === 'turnout';
      if (aboutTrack !== (ruleSet.kind === 'track')) {
        complain(`${limit.id}: ${quantity.name} does not belong in a set of ${ruleSet.kind} limits.`);
      }
      if (!sameMembers(Object.keys(limit.perClass), classIds)) {
        complain(`${limit.id}: give one amount, or none, for each of the classes ${classIds.join(', ')}.`);
      }
      for (const wrong of answersOf(limit).map(wrongAnswer)) {
        if (wrong !== '') complain(`${limit.id}: ${wrong}`);
      }
      if (limit.overBase !== undefined && limit.base === undefined) {
        complain(`${limit.id}: say over which length the amounts hold.`);
      }
      const withAmount = classIds.filter((id) => typeof limit.perClass[id] === 'number');
      if (!sameMembers(Object.keys(limit.asPrinted), withAmount)) {
        complain(`${limit.id}: the printed text must stand beside every amount and nowhere else.`);
      }
      if (quantity.compare === 'magnitude' && limit.sense === 'min') {
        complain(`${limit.id}: a deviation has a most, not a least.`);
      }
      if (ruleSet.kind === 'track' && loosensUpward(limit, classIds)) {
        complain(`${limit.id}: a faster class is allowed more than a slower one. Check the amounts.`);
      }
    }
  });

/** Compile-time check that what the schema lets through is a RuleSet. */
export const asRuleSet = (checked: z.output<typeof ruleSetSchema>): RuleSet => checked;
