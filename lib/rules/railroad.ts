import { z } from 'zod';
import type { Source } from '../findings/finding';
import { ok, refuse, type Result } from '../readings/result';
import { printedLengthMm } from './printed';
import { RULE_SETS } from './index';
import { silentLimits, type OwnLimit } from './fill-from-base';
import { isRuleQuantityId, RULE_QUANTITIES, RULE_QUANTITY_IDS } from './rule-quantity';
import type { RuleLimit, RuleSet } from './rule-set';
import { asRuleSet, ruleSetSchema } from './schema';

/** An amount as the railroad's own document prints it, with its unit: `57 3/4"`, `1465 mm`; a count: 8. */
const amount = z.union(
  [z.string().trim().min(1), z.number()],
  'Enter the amount as the document prints it, with its unit, such as "57 3/4 in" or "1465 mm".',
);

const entry = z.strictObject({
  quantity: z
    .string()
    .refine(isRuleQuantityId, `Choose what is limited, one of: ${RULE_QUANTITY_IDS.join(', ')}.`),
  sense: z.enum(['max', 'min'], 'Say whether the amount is a most ("max") or a least ("min").'),
  atLimit: z.enum(
    ['allowed', 'condemned'],
    'Say what happens exactly at the limit: "allowed" ("more than" condemns) or "condemned" ("or more" condemns).',
  ),
  applies: z.enum(['tangent', 'curve', 'both'], 'Choose "tangent", "curve" or "both".').default('both'),
  /** One amount for every class, or an amount (null: none) for each class. */
  amount: z.union([amount, z.record(z.string(), amount.nullable())]),
  item: z.string().trim().min(1).max(80).optional(),
  note: z.string().trim().min(1).max(400).optional(),
});

/** What the user enters for the railroad's own limits. */
export const railroadLimitsSchema = z.strictObject({
  name: z.string('Enter a name for these limits.').trim().min(1, 'Enter a name for these limits.').max(80),
  document: z
    .string('Enter the title and edition of the document the limits stand in.')
    .trim()
    .min(1, 'Enter the title and edition of the document the limits stand in.')
    .max(200),
  basedOn: z.string('Name the rule set whose classes these limits use, such as "us-49cfr213".'),
  whereSilent: z
    .enum(
      ['base', 'nothing'],
      'Say what holds where these limits are silent: "base" (the set they are based on) or "nothing".',
    )
    .default('base'),
  limits: z.array(entry, 'Enter at least one limit.').min(1, 'Enter at least one limit.'),
});

export type RailroadLimits = z.output<typeof railroadLimitsSchema>;
type Entry = RailroadLimits['limits'][number];

const slugOf = (name: string): string =>
  name
    .normalize('NFKD')
    .replace(/[^a-zA-Z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase();

const readAmount = (entered: string | number, unit: 'mm' | 'count'): Result<number> => {
  if (unit === 'mm') {
    return typeof entered === 'number'
      ? refuse(`${entered}: write the unit with the limit, such as "${entered} in" or "${entered} mm".`)
      : printedLengthMm(entered);
  }
  const count = typeof entered === 'number' ? entered : Number(entered);
  return Number.isInteger(count) && count > 0
    ? ok(count)
    : refuse(`“${entered}”: enter a whole number, such as 8.`);
};

const readLimit = (
  read: Entry,
  index: number,
  base: RuleSet,
  source: Source,
  from: string,
): Result<OwnLimit> => {
  if (!isRuleQuantityId(read.quantity)) throw new Error(`${read.quantity} passed the schema`);
  const { unit, name } = RULE_QUANTITIES[read.quantity];
  const where = `Limit ${index + 1} (${name})`;
  const classIds = base.classes.map((each) => each.id);
  const given =
    typeof read.amount === 'object'
      ? read.amount
      : Object.fromEntries(classIds.map((id) => [id, read.amount as string | number]));
  const unknown = Object.keys(given).find((id) => !classIds.includes(id));
  if (unknown !== undefined) {
    return refuse(`${where}: there is no class “${unknown}”. Use ${classIds.join(', ')}.`);
  }
  const perClass: Record<string, number | null> = {};
  const asPrinted: Record<string, string> = {};
  for (const id of classIds) {
    const entered = given[id] ?? null;
    perClass[id] = null;
    if (entered === null) continue;
    const value = readAmount(entered, unit);
    if (!value.ok) return refuse(`${where}, ${id}: ${value.message}`);
    if (value.value <= 0)
      return refuse(`${where}, ${id}: enter a limit greater than nothing, or leave it out.`);
    perClass[id] = value.value;
    asPrinted[id] = String(entered).trim();
  }
  if (Object.keys(asPrinted).length === 0) return refuse(`${where}: enter an amount for at least one class.`);
  // Which length a quantity is taken over belongs to its meaning, so it is the base set's.
  const sameQuantity = base.limits.find((each) => each.quantity === read.quantity && each.base !== undefined);
  const limit: RuleLimit = {
    id: `limit-${index + 1}`,
    quantity: read.quantity,
    sense: read.sense,
    strict: read.atLimit === 'allowed',
    applies: read.applies,
    perClass,
    asPrinted,
    base: sameQuantity?.base,
    citation: read.item === undefined ? source.text : `${source.text}, ${read.item}`,
    source,
    note: read.note,
    from,
  };
  return ok({ limit, named: classIds.filter((id) => Object.hasOwn(given, id)) });
};

const parseJson = (json: unknown): Result<unknown> => {
  if (typeof json !== 'string') return ok(json);
  try {
    return ok(JSON.parse(json));
  } catch {
    return refuse(
      'The limits could not be read: the text is not valid JSON. Check brackets, commas and quotes.',
    );
  }
};

const firstIssue = (error: z.ZodError): string => {
  const issue = error.issues[0];
  const place = issue?.path.map((p) => (typeof p === 'number' ? `${p + 1}` : String(p))).join(' ');
  return `${place ? `${place}: ` : ''}${issue?.message ?? 'The limits could not be read.'}`;
};

/**
 * The railroad's own limits, as the user entered them (JSON text, or the object itself; see
 * `railroadLimitsSchema`), as a rule set with the classes of the set they are based on and, unless it
 * is said otherwise, that set's limits and conditions where they are silent. `known` are
 * the sets they may be based on. Amounts are read with their units and kept as printed beside the mm.
 * Errors: one message naming the limit and saying what to enter instead.
 */
export const parseRailroadLimits = (
  json: unknown,
  known: readonly RuleSet[] = RULE_SETS,
): Result<RuleSet> => {
  const parsed = parseJson(json);
  if (!parsed.ok) return parsed;
  const entered = railroadLimitsSchema.safeParse(parsed.value);
  if (!entered.success) return refuse(firstIssue(entered.error));
  const { name, document, basedOn, whereSilent, limits } = entered.data;
  const base = known.find((each) => each.id === basedOn);
  if (!base) {
    return refuse(`There is no rule set “${basedOn}”. Choose one of: ${known.map((k) => k.id).join(', ')}.`);
  }
  const slug = slugOf(name);
  if (slug === '') return refuse(`“${name}”: use letters or digits in the name.`);
  const source: Source = { text: `${document} (the railroad’s own limits, as entered)`, status: 'published' };
  const own: OwnLimit[] = [];
  for (const [index, one] of limits.entries()) {
    const limit = readLimit(one, index, base, source, name);
    if (!limit.ok) return limit;
    own.push(limit.value);
  }
  const fills = whereSilent === 'base';
  const checked = ruleSetSchema.safeParse({
    id: `railroad-${slug}`,
    name,
    jurisdiction: 'The railroad’s own',
    edition: document,
    notes: [
      `Entered by the user; classes are those of ${base.name}.`,
      fills
        ? `What these lines do not name is taken from ${base.name}; each limit says where it is from.`
        : 'What these lines do not name is held against nothing.',
    ],
    kind: base.kind,
    equipmentSet: base.equipmentSet,
    classes: base.classes,
    classBy: base.classBy,
    classSpeeds: base.classSpeeds,
    limits: [...own.map(({ limit }) => limit), ...(fills ? silentLimits(own, base) : [])],
    conditions: fills ? (base.conditions ?? []).map((each) => ({ ...each, from: base.name })) : undefined,
    combined: fills ? base.combined : undefined,
    basedOn: { id: base.id, whereSilent },
    conventions: base.conventions,
    curvingSpeed: base.curvingSpeed,
  });
  return checked.success ? ok(asRuleSet(checked.data)) : refuse(firstIssue(checked.error));
};
