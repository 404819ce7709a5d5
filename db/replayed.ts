import { asc, eq } from 'drizzle-orm';
import { ENTITY_KINDS } from '~/lib/case/record';
import type { Json } from '~/lib/custody/canonical';
import type { Db } from './open';
import { changeLog } from './schema';

/** One row as it is kept, or as the log has it: fields of a record stand beside its id, order and removal. */
export type Kept = Readonly<Record<string, Json>>;

export type KeptFile = { readonly sha256: string; readonly fileName: string };

export type Replayed = {
  /** By kind of thing, then by its id. */
  readonly rows: ReadonlyMap<string, ReadonlyMap<string, Kept>>;
  /** Files that imports were made from. */
  readonly files: readonly KeptFile[];
};

type Told = { readonly [key: string]: Json | undefined };

const told = (json: Json | undefined): Told =>
  typeof json === 'object' && json !== null && !Array.isArray(json) ? (json as Told) : {};
const list = (json: Json | undefined): readonly Json[] =>
  Array.isArray(json) ? (json as readonly Json[]) : [];

/** Kinds whose log does not repeat the moment of the entry in the row. */
const DATED_BY_ENTRY = new Set<string>([...ENTITY_KINDS, 'recorderRun']);

/**
 * What the log of a case, read from its first entry on, says that is kept now: every row that was ever
 * added, as the later entries changed it, and none that was taken back.
 */
export function replayLog(db: Db, caseId: string): Replayed {
  const rows = new Map<string, Map<string, Kept>>();
  const files: KeptFile[] = [];
  const of = (kind: string): Map<string, Kept> => {
    const known = rows.get(kind) ?? new Map<string, Kept>();
    rows.set(kind, known);
    return known;
  };
  const put = (kind: string, id: string, at: string, { fields, ...row }: Told): void => {
    const known = of(kind);
    const before = known.get(id) ?? (DATED_BY_ENTRY.has(kind) ? { createdAt: at } : {});
    known.set(id, { ...before, ...told(fields), ...row, id } as Kept);
  };
  const entries = db
    .select({
      kind: changeLog.subjectKind,
      id: changeLog.subjectId,
      at: changeLog.at,
      after: changeLog.after,
    })
    .from(changeLog)
    .where(eq(changeLog.caseId, caseId))
    .orderBy(asc(changeLog.seq))
    .all();
  for (const { kind, id, at, after: text } of entries) {
    const json = JSON.parse(text) as Json;
    const after = told(json);
    if (json === null) of(kind).delete(id ?? kind);
    else if (Array.isArray(json))
      list(json).forEach((moved, order) => put(kind, String(moved), at, { order }));
    else if (Array.isArray(after.rows)) {
      for (const row of list(after.rows)) put(kind, String(told(row).id), at, told(row));
      for (const row of list(after.readings)) put('reading', String(told(row).id), at, told(row));
      const { sha256, fileName } = told(after.file);
      if (sha256 !== undefined) files.push({ sha256: String(sha256), fileName: String(fileName) });
    }
    // A correction is a row of its own beside the one it speaks of.
    else put(kind, String(kind === 'reading' ? after.id : (id ?? kind)), at, after);
  }
  return { rows, files };
}
