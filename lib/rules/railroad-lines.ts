import { ok, refuse, type Result } from '../readings/result';
import { RULE_SETS } from './index';
import { parseRailroadLimits } from './railroad';
import { isRuleQuantityId, RULE_QUANTITIES, RULE_QUANTITY_IDS, type RuleQuantityId } from './rule-quantity';
import type { RuleSet } from './rule-set';

/** Longest text of limits that is read. */
export const LIMITS_LENGTH = 40_000;

const HEADS = {
  name: 'name',
  document: 'document',
  'based on': 'basedOn',
  'where silent': 'whereSilent',
} as const;
type Head = (typeof HEADS)[keyof typeof HEADS];
type NeededHead = Exclude<Head, 'whereSilent'>;
const NEEDED: readonly NeededHead[] = ['name', 'document', 'basedOn'];
const HEAD_LINE = new RegExp(`^(${Object.keys(HEADS).join('|')})\\s*:(.*)$`, 'i');

const HEAD_HELP: Readonly<Record<NeededHead, string>> = {
  name: '“name: ” and what these limits are to be called',
  document: '“document: ” and the title and edition they stand in',
  basedOn: `“based on: ” and the rule set whose classes they use, ${RULE_SETS.map(({ id }) => id).join(' or ')}`,
};

const SENSES: Readonly<Record<string, 'max' | 'min'>> = { most: 'max', max: 'max', least: 'min', min: 'min' };
const APPLIES = ['tangent', 'curve', 'both'] as const;
const AT_LIMIT = ['allowed', 'condemned'] as const;

const plain = (text: string): string => text.trim().replace(/\s+/g, ' ').toLowerCase();

const BY_NAME: ReadonlyMap<string, RuleQuantityId> = new Map(
  RULE_QUANTITY_IDS.flatMap((id) => [
    [plain(id), id],
    [plain(RULE_QUANTITIES[id].name), id],
  ]),
);

const EXAMPLE = 'gauge; most; 1=58", 2=57 3/4", 3=57 1/2"; both; item 4';

/** A limit as `parseRailroadLimits` takes it. */
type Entry = Readonly<Record<string, unknown>>;

/** `57 3/4"` for every class, or `1=58", 2=57 3/4"`; a dash for none. */
function amountOf(text: string): unknown {
  if (!text.includes('=')) return text.trim();
  return Object.fromEntries(
    text.split(',').map((part) => {
      const at = part.indexOf('=');
      const amount = part.slice(at + 1).trim();
      return [part.slice(0, at).trim(), amount === '-' || amount === '–' ? null : amount];
    }),
  );
}

function entryOf(line: string): Result<Entry> {
  const [what = '', sense = '', amount = '', ...more] = line.split(';').map((part) => part.trim());
  const quantity = BY_NAME.get(plain(what));
  if (quantity === undefined || !isRuleQuantityId(quantity)) {
    return refuse(`“${what}” is nothing that can be limited. Write one of the names in the list below.`);
  }
  const by = SENSES[plain(sense)];
  if (by === undefined) return refuse('Say “most” or “least” after what is limited, between semicolons.');
  if (amount === '') return refuse(`Write the amount third, such as in: ${EXAMPLE}`);
  const words = more.map(plain);
  const applies = APPLIES.find((word) => words.includes(word));
  const atLimit = AT_LIMIT.find((word) => words.includes(word));
  const item = more.find((text) => {
    const word = plain(text);
    return word !== '' && word !== applies && word !== atLimit;
  });
  return ok({
    quantity,
    sense: by,
    amount: amountOf(amount),
    applies: applies ?? 'both',
    atLimit: atLimit ?? 'allowed',
    ...(item === undefined ? {} : { item }),
  });
}

/** What is wrong, line by line; `line` null where no one line is to blame. */
export type BadLine = { readonly line: number | null; readonly message: string };

export type ReadLimits =
  { readonly ok: true; readonly ruleSet: RuleSet } | { readonly ok: false; readonly bad: readonly BadLine[] };

/**
 * The railroad's own limits as a person writes them, a limit to a line, or as JSON (see
 * `railroadLimitsSchema`). Lines head them: “name:”, “document:”, “based on:” and, where the set they are
 * based on is not to hold where they are silent, “where silent: nothing”; a limit is
 * what; most or least; amount with its unit for every class, or class=amount with commas between;
 * then, in any order and only where needed, tangent, curve or both (the usual), allowed (the usual)
 * or condemned for a value exactly at the limit, and the item of the document. Empty lines and
 * lines beginning with # are passed over.
 * Errors: every bad line with its number and what to write instead.
 */
export function readRailroadLimits(text: string): ReadLimits {
  if (text.length > LIMITS_LENGTH)
    return bad([{ line: null, message: `Enter at most ${LIMITS_LENGTH} characters.` }]);
  if (text.trim().startsWith('{')) {
    const parsed = parseRailroadLimits(text);
    return parsed.ok ? { ok: true, ruleSet: parsed.value } : bad([{ line: null, message: parsed.message }]);
  }
  const heads: Partial<Record<Head, string>> = {};
  const entries: { readonly line: number; readonly entry: Entry }[] = [];
  const wrong: BadLine[] = [];
  text.split(/\r?\n/).forEach((raw, index) => {
    const content = raw.trim();
    if (content === '' || content.startsWith('#')) return;
    const line = index + 1;
    const head = HEAD_LINE.exec(content);
    if (head) {
      heads[HEADS[plain(head[1] ?? '') as keyof typeof HEADS]] = (head[2] ?? '').trim();
      return;
    }
    const entry = entryOf(content);
    if (entry.ok) entries.push({ line, entry: entry.value });
    else wrong.push({ line, message: entry.message });
  });
  for (const head of NEEDED) {
    if (!heads[head]) wrong.push({ line: null, message: `Add a line with ${HEAD_HELP[head]}.` });
  }
  if (entries.length === 0 && wrong.every(({ line }) => line === null))
    wrong.push({ line: null, message: `Add a line for each limit, such as: ${EXAMPLE}` });
  // Each limit is tried alone first, so that every bad line is named and not the first one only.
  const headed = NEEDED.every((head) => heads[head]) ? heads : null;
  if (headed !== null && RULE_SETS.some(({ id }) => id === headed.basedOn)) {
    for (const { line, entry } of entries) {
      const alone = parseRailroadLimits({ ...headed, whereSilent: 'nothing', limits: [entry] });
      if (!alone.ok) wrong.push({ line, message: alone.message.replace(/^Limit 1 /, '') });
    }
  }
  if (wrong.length > 0) return bad(wrong);
  const whole = parseRailroadLimits({ ...headed, limits: entries.map(({ entry }) => entry) });
  return whole.ok ? { ok: true, ruleSet: whole.value } : bad([{ line: null, message: whole.message }]);
}

const bad = (found: readonly BadLine[]): ReadLimits => ({
  ok: false,
  bad: [...found].sort((a, b) => (a.line ?? Infinity) - (b.line ?? Infinity)),
});

/** What a form lets a person choose instead of writing it as a line. */
export type ChosenHeads = { readonly basedOn: string; readonly whereSilent: string };

const CHOSEN = { 'based on': 'basedOn', 'where silent': 'whereSilent' } as const;

const isJson = (text: string): boolean => text.trim().startsWith('{');

/** The text headed by what was chosen; a line that the text itself has stands. */
export function withChosenHeads(text: string, chosen: ChosenHeads): string {
  if (isJson(text)) return text;
  const { heads } = splitHeads(text);
  const added = Object.entries(CHOSEN).flatMap(([line, head]) =>
    heads[head] === undefined && chosen[head] !== '' ? [`${line}: ${chosen[head]}`] : [],
  );
  return [...added, text].join('\n');
}

/** A text without the lines a form lets a person choose, and what they said. */
export function splitHeads(text: string): { readonly rest: string; readonly heads: Partial<ChosenHeads> } {
  if (isJson(text)) return { rest: text, heads: {} };
  const heads: { basedOn?: string; whereSilent?: string } = {};
  const rest = text.split(/\r?\n/).filter((raw) => {
    const [, line = '', said = ''] = HEAD_LINE.exec(raw.trim()) ?? [];
    const head = CHOSEN[plain(line) as keyof typeof CHOSEN];
    if (head === undefined) return true;
    heads[head] = said.trim();
    return false;
  });
  return { rest: rest.join('\n'), heads };
}

/** The rule set of a case that is held against the railroad's own limits. */
export const RAILROAD_RULES = 'railroad';

/** The last text read: a case is computed many times over with the same one. */
let last: { readonly text: string; readonly ruleSet: RuleSet | undefined } | null = null;

/** The rule set of limits that were kept, so that they could be read; undefined for a text that cannot. */
export function railroadRuleSet(text: string): RuleSet | undefined {
  if (last?.text !== text) {
    const read = readRailroadLimits(text);
    last = { text, ruleSet: read.ok ? read.ruleSet : undefined };
  }
  return last.ruleSet;
}
