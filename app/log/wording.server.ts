import { fieldText } from '~/app/entities/table-rows';
import { isEntityKind } from '~/app/entities/save.server';
import { quantityText, readingText } from '~/app/readings/wording';
import { moment } from '~/app/times';
import type { LogEntry } from '~/db/log';
import { caseKind, KINDS } from '~/lib/case/kinds';
import type { Kind } from '~/lib/case/kind';
import { nameOf } from '~/lib/case/name-of';
import type { CaseRecord, Entity, Reading } from '~/lib/case/record';
import { RECORD_NOUNS, recordChanges } from './record-words.server';

export type LoggedChange = { readonly label: string; readonly before: string; readonly after: string };

export type LoggedEntry = {
  readonly seq: number;
  readonly at: string;
  readonly who: string;
  readonly what: string;
  readonly changes: readonly LoggedChange[];
  /** How many further rows of the same entry are not spelled out. */
  readonly more: number;
  readonly hash: string;
};

const ACTIONS: Readonly<Record<string, string>> = {
  open: 'Opened',
  add: 'Added',
  update: 'Changed',
  remove: 'Removed',
  restore: 'Put back',
  correct: 'Corrected',
  withdraw: 'Withdrew',
  import: 'Imported',
  move: 'Moved',
  set: 'Set',
  clear: 'Took back',
};

const SPELLED_OUT = 6;

type Plain = Readonly<Record<string, unknown>>;
const plain = (value: unknown): Plain | null =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Plain) : null;

const kindOf = (subjectKind: string): Kind | null =>
  subjectKind === 'case' ? caseKind : isEntityKind(subjectKind) ? KINDS[subjectKind] : null;

/** A value of the log that no catalogue names, short enough to read. */
function anything(value: unknown): string {
  if (value === null || value === undefined || value === '') return '';
  const text = typeof value === 'string' ? value : JSON.stringify(value);
  return text.length > 160 ? `${text.slice(0, 160)}…` : text;
}

function differences(record: CaseRecord, kind: Kind | null, before: Plain, after: Plain): LoggedChange[] {
  const ids = [...new Set([...Object.keys(before), ...Object.keys(after)])];
  return ids.flatMap((id): LoggedChange[] => {
    const field = kind?.fields.find((each) => each.id === id);
    const show = (value: unknown) =>
      field ? fieldText(record, field, value as Entity['fields'][string]) : anything(value);
    const change = { label: field?.label ?? id, before: show(before[id]), after: show(after[id]) };
    return change.before === change.after ? [] : [change];
  });
}

const isReading = (value: Plain | null): boolean =>
  value !== null && 'quantity' in value && 'entered' in value;

const readingLine = (record: CaseRecord, reading: Reading): string =>
  `${nameOf(record, reading.subject)} · ${quantityText(reading.quantity, reading.slot)}`;

function readingChange(record: CaseRecord, before: Plain | null, after: Plain | null): LoggedChange {
  const now = after as unknown as Reading;
  const was = before as unknown as Reading | null;
  const reason = now.reason ? ` (${now.reason})` : '';
  return {
    label: readingLine(record, now),
    before: was && isReading(before) ? readingText(was) : '',
    after: readingText(now) + reason,
  };
}

function changesOf(record: CaseRecord, entry: LogEntry): readonly LoggedChange[] {
  const before = plain(entry.before);
  const after = plain(entry.after);
  const kind = kindOf(entry.subjectKind);
  const rows = after?.rows;
  if (Array.isArray(rows)) {
    const reason = plain(plain(rows[0])?.removed)?.reason;
    const listed = rows.map((row): LoggedChange => {
      const each = plain(row);
      if (each && isReading(each)) return readingChange(record, null, each);
      if (each && 'removed' in each && !('fields' in each) && isEntityKind(entry.subjectKind)) {
        const name = nameOf(record, { kind: entry.subjectKind, id: String(each.id) });
        return { label: kind?.name ?? entry.subjectKind, before: name, after: '' };
      }
      const fields = plain(each?.fields) ?? {};
      return {
        label: kind?.name ?? entry.subjectKind,
        before: '',
        after: kind?.describe(fields as Entity['fields']) ?? anything(row),
      };
    });
    return reason === undefined
      ? listed
      : [{ label: 'Reason', before: '', after: anything(reason) }, ...listed];
  }
  if (after && isReading(after)) return [readingChange(record, before, after)];
  const removed = plain(after?.removed);
  if (removed) return [{ label: 'Reason', before: '', after: anything(removed.reason) }];
  if (after && 'removed' in after && Object.keys(after).length === 1) return [];
  if (entry.subjectKind in RECORD_NOUNS) return recordChanges(record, before ?? {}, after ?? {});
  const flat = (side: Plain | null): Plain => plain(side?.fields) ?? side ?? {};
  return differences(record, kind, flat(before), flat(after));
}

function subjectOf(record: CaseRecord, { subjectKind, subjectId, action, after }: LogEntry): string {
  if (subjectKind === 'case') return action === 'open' ? 'the case' : 'the occurrence';
  const rows = plain(after)?.rows;
  const count = Array.isArray(rows) ? rows.length : 1;
  if (subjectKind === 'reading') return count === 1 ? 'a reading' : `${count} readings`;
  if (!isEntityKind(subjectKind)) return RECORD_NOUNS[subjectKind] ?? subjectKind;
  if (subjectId === null) return `${count} ${KINDS[subjectKind].plural.toLowerCase()}`;
  return `${KINDS[subjectKind].name.toLowerCase()} “${nameOf(record, { kind: subjectKind, id: subjectId })}”`;
}

/** An entry of the log in words. */
export function entryInWords(record: CaseRecord, entry: LogEntry): LoggedEntry {
  const changes = changesOf(record, entry);
  return {
    seq: entry.seq,
    at: moment(entry.at),
    who: entry.actorName,
    what: `${ACTIONS[entry.action] ?? entry.action} ${subjectOf(record, entry)}`,
    changes: changes.slice(0, SPELLED_OUT),
    more: Math.max(0, changes.length - SPELLED_OUT),
    hash: entry.hash,
  };
}
