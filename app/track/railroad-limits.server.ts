import type { LoadedCase } from '~/app/case.server';
import type { Actor } from '~/db/actor';
import { updateCase } from '~/db/cases';
import { keepRailroadLimits, limitsOfRailroad } from '~/db/railroad-limits';
import { RAILROAD_RULES, readRailroadLimits, type BadLine } from '~/lib/rules/railroad-lines';
import { RULE_QUANTITIES, RULE_QUANTITY_IDS } from '~/lib/rules/rule-quantity';

export type LimitsAnswer = { readonly bad: readonly BadLine[]; readonly text: string };

/** What stands in the box before anything is entered. */
const EXAMPLE_TEXT = `name: Example Lines track standard
document: Engineering instructions, edition 3, table 4
based on: us-49cfr213
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
  const read = readRailroadLimits(text);
  if (!read.ok) return { bad: read.bad, text };
  if (read.ruleSet.kind !== 'track')
    return { bad: [{ line: null, message: 'Base these limits on a set about track.' }], text };
  keepRailroadLimits(db, caseId, text, actor);
  if (form.get('use') !== null && record.fields.ruleSet !== RAILROAD_RULES)
    updateCase(db, caseId, { ruleSet: RAILROAD_RULES }, actor);
  return null;
}

export function limitsView({ db, caseId, record }: LoadedCase) {
  const entered = record.railroadLimits ?? null;
  const read = entered === null ? null : readRailroadLimits(entered);
  return {
    entered: entered ?? EXAMPLE_TEXT,
    isExample: entered === null,
    inUse: record.fields.ruleSet === RAILROAD_RULES,
    set: read?.ok ? read.ruleSet : null,
    elsewhere: limitsOfRailroad(db, caseId, String(record.fields.railroad ?? '')),
    names: RULE_QUANTITY_IDS.filter((id) => ['track', 'turnout'].includes(RULE_QUANTITIES[id].about)).map(
      (id) => ({ id, name: RULE_QUANTITIES[id].name, unit: RULE_QUANTITIES[id].unit }),
    ),
  };
}
