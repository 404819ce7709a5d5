import type { LoadedCase } from '~/app/case.server';
import type { Actor } from '~/db/actor';
import { updateCase } from '~/db/cases';
import { keepRailroadLimits, limitsOfRailroad } from '~/db/railroad-limits';
import { ruleSetById, TRACK_SETS } from '~/lib/rules';
import { besideRows, type Standing } from '~/lib/rules/fill-from-base';
import {
  RAILROAD_RULES,
  readRailroadLimits,
  splitHeads,
  withChosenHeads,
  type BadLine,
  type ChosenHeads,
} from '~/lib/rules/railroad-lines';
import { RULE_QUANTITIES, RULE_QUANTITY_IDS } from '~/lib/rules/rule-quantity';
import type { RuleSet } from '~/lib/rules/rule-set';

export type LimitsAnswer = {
  readonly bad: readonly BadLine[];
  readonly text: string;
  readonly chosen: ChosenHeads;
};

const WHERE_SILENT = [
  { id: 'base', label: 'The base set holds' },
  { id: 'nothing', label: 'Nothing holds' },
] as const;

/** What stands in the box before anything is entered. */
const EXAMPLE_TEXT = `name: Example Lines track standard
document: Engineering instructions, edition 3, table 4
# what; most or least; amount, or class=amount; where it holds; item
gauge; most; 1=57 7/8", 2=57 3/4", 3=57 1/2", 4=57 1/4", 5=57 1/4"; item 1
crosslevelDifference62; most; 1 3/4"; both; item 2
`;

const MOST_BYTES = 200_000;

/** The uploaded file when there is one, else the text of the box. */
async function sentText(form: FormData): Promise<string> {
  const file = form.get('file');
  const box = String(form.get('limits') ?? '');
  if (!(file instanceof Blob) || file.size === 0) return box;
  return file.size > MOST_BYTES ? box : (await file.text()).replace(/^\uFEFF/, '');
}

/** Keeps the limits that were sent when every line can be read; says of each bad one what to write. */
export async function saveLimits(
  form: FormData,
  { db, caseId, record }: LoadedCase,
  actor: Actor,
): Promise<LimitsAnswer | null> {
  const text = await sentText(form);
  const chosen = {
    basedOn: String(form.get('basedOn') ?? ''),
    whereSilent: String(form.get('whereSilent') ?? ''),
  };
  const whole = withChosenHeads(text, chosen);
  // What was chosen stands as lines before the text: a bad line is counted as the person sees it.
  const added = whole.split('\n').length - text.split('\n').length;
  const read = readRailroadLimits(whole);
  if (!read.ok) {
    const bad = read.bad.map(({ line, message }) => ({ line: line === null ? null : line - added, message }));
    return { bad, text, chosen };
  }
  if (read.ruleSet.kind !== 'track')
    return { bad: [{ line: null, message: 'Base these limits on a set about track.' }], text, chosen };
  keepRailroadLimits(db, caseId, whole, actor);
  if (form.get('use') !== null && record.fields.ruleSet !== RAILROAD_RULES)
    updateCase(db, caseId, { ruleSet: RAILROAD_RULES }, actor);
  return null;
}

export type BesideView = {
  readonly base: string;
  readonly rows: readonly {
    readonly key: string;
    readonly what: string;
    readonly section: string;
    /** Labels of the classes that have the same amounts. */
    readonly classes: string;
    readonly own: string;
    readonly base: string;
    readonly standing: Standing;
  }[];
};

/** Every own limit beside the base's on the same thing, classes with the same amounts in one row. */
function besideView(set: RuleSet): BesideView | null {
  const base = ruleSetById(set.basedOn?.id ?? '');
  if (base === undefined) return null;
  const labels = new Map(base.classes.map(({ id, label }) => [id, label]));
  const rows = besideRows(set, base).map(
    ({ own, base: limit, classIds, ownPrinted, basePrinted, standing }) => ({
      key: [own.id, limit.id, classIds.join()].join(' '),
      what: RULE_QUANTITIES[own.quantity].name,
      section: `${own.sense === 'max' ? 'at most' : 'at least'}; base: ${limit.citation}`,
      classes: classIds.map((id) => labels.get(id) ?? id).join(', '),
      own: ownPrinted,
      base: basePrinted,
      standing,
    }),
  );
  return { base: base.name, rows };
}

/** A text as the form shows it: without the lines that are choices of their own. */
const shown = (text: string) => {
  const { rest, heads } = splitHeads(text);
  return {
    text: rest,
    chosen: { basedOn: heads.basedOn ?? TRACK_SETS[0]?.id ?? '', whereSilent: heads.whereSilent ?? 'base' },
  };
};

export function limitsView({ db, caseId, record }: LoadedCase) {
  const entered = record.railroadLimits ?? null;
  const read = entered === null ? null : readRailroadLimits(entered);
  const set = read?.ok ? read.ruleSet : null;
  return {
    ...shown(entered ?? EXAMPLE_TEXT),
    isExample: entered === null,
    inUse: record.fields.ruleSet === RAILROAD_RULES,
    set,
    beside: set && besideView(set),
    bases: TRACK_SETS.map(({ id, name, choice }) => ({ id, label: choice ?? name })),
    whereSilent: WHERE_SILENT,
    elsewhere: limitsOfRailroad(db, caseId, String(record.fields.railroad ?? '')).map((other) => ({
      ...other,
      ...shown(other.entered),
    })),
    names: RULE_QUANTITY_IDS.filter((id) => ['track', 'turnout'].includes(RULE_QUANTITIES[id].about)).map(
      (id) => ({ id, name: RULE_QUANTITIES[id].name, unit: RULE_QUANTITIES[id].unit }),
    ),
  };
}
