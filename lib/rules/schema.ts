import { z } from 'zod';
import { RULE_QUANTITIES, RULE_QUANTITY_IDS, type RuleQuantityId } from './rule-quantity';
import type { RuleLimit, RuleSet } from './rule-set';

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

const ruleLimit = z.strictObject({
  id: slug,
  quantity: z.enum(RULE_QUANTITY_IDS as [RuleQuantityId, ...RuleQuantityId[]]),
  sense: z.enum(['max', 'min']),
  strict: z.boolean(),
  applies: z.enum(['tangent', 'curve', 'both']),
  curveUpToDegrees: z.number().positive().optional(),
  curveOverDegrees: z.number().positive().optional(),
  perClass: z.record(slug, z.number().positive().nullable()),
  asPrinted: z.record(slug, text),
  base: z
    .strictObject({
      kind: z.enum(['chord', 'within']),
      lengthM: z.number().positive(),
      includesExact: z.boolean(),
    })
    .optional(),
  onlyWhere: text.optional(),
  consequence: z.strictObject({ speedMs: z.number().positive(), text }).optional(),
  citation: text,
  source,
  note: text.optional(),
});

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
    jurisdiction: text,
    edition: text,
    notes: z.array(text),
    kind: z.enum(['track', 'equipment']),
    classes: z.array(ruleClass).min(1),
    limits: z.array(ruleLimit).min(1),
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
    const limitIds = ruleSet.limits.map((each) => each.id);
    if (new Set(limitIds).size < limitIds.length) complain('Two limits have the same id.');
    for (const limit of ruleSet.limits) {
      const quantity = RULE_QUANTITIES[limit.quantity];
      const aboutTrack = quantity.about === 'track' || quantity.about === 'turnout';
      if (aboutTrack !== (ruleSet.kind === 'track')) {
        complain(`${limit.id}: ${quantity.name} does not belong in a set of ${ruleSet.kind} limits.`);
      }
      if (!sameMembers(Object.keys(limit.perClass), classIds)) {
        complain(`${limit.id}: give one amount, or none, for each of the classes ${classIds.join(', ')}.`);
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
