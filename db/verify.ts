import { and, asc, eq, inArray } from 'drizzle-orm';
import { readFileSync } from 'node:fs';
import { canonicalJson, sha256Hex, type Json } from '~/lib/custody/canonical';
import type { FileStore } from './files';
import { verifyLog } from './log';
import type { Db } from './open';
import { keptOwnShapes } from './own-shapes';
import { keptRailroadLimits } from './railroad-limits';
import { changeLog } from './schema';
import { keptTraces } from './traces';

type Kept = Readonly<Record<string, Json>>;

const WORDS = {
  trace: 'outline',
  ownShape: 'reference shape',
  railroadLimits: 'text of the railroad’s own limits',
} as const;
type SealedKind = keyof typeof WORDS;
const SEALED_KINDS: readonly SealedKind[] = ['trace', 'ownShape', 'railroadLimits'];

/**
 * Computes the log anew, then what it says of every outline, reference shape and text of limits, and holds that
 * against what is kept: row, points and file. Lists every difference in words.
 */
export function verifyCase(
  db: Db,
  store: FileStore,
  caseId: string,
): { readonly ok: boolean; readonly problems: readonly string[] } {
  const kept = {
    trace: keptTraces(db, caseId),
    ownShape: keptOwnShapes(db, caseId),
    railroadLimits: keptRailroadLimits(db, caseId),
  };
  const logged = replayed(db, caseId);
  const problems = [
    ...verifyLog(db, caseId).problems,
    ...SEALED_KINDS.flatMap((kind) => rowProblems(kind, kept[kind], logged[kind])),
    ...fileProblems(store, [...kept.trace, ...kept.ownShape]),
  ];
  return { ok: problems.length === 0, problems };
}

/** What the log, read from its first entry on, says each one is now. */
function replayed(db: Db, caseId: string): Readonly<Record<SealedKind, ReadonlyMap<string, Kept>>> {
  const said = {
    trace: new Map<string, Kept>(),
    ownShape: new Map<string, Kept>(),
    railroadLimits: new Map<string, Kept>(),
  };
  const entries = db
    .select({ kind: changeLog.subjectKind, id: changeLog.subjectId, after: changeLog.after })
    .from(changeLog)
    .where(and(eq(changeLog.caseId, caseId), inArray(changeLog.subjectKind, [...SEALED_KINDS])))
    .orderBy(asc(changeLog.seq))
    .all();
  for (const { kind, id, after } of entries) {
    if (id === null) continue;
    const now = said[kind as SealedKind];
    now.set(id, { ...now.get(id), ...(JSON.parse(after) as Kept) });
  }
  return said;
}

function rowProblems(
  kind: SealedKind,
  kept: readonly Kept[],
  logged: ReadonlyMap<string, Kept>,
): readonly string[] {
  const words = WORDS[kind];
  const there = new Set(kept.map(({ id }) => id));
  const gone = [...logged.keys()].filter((id) => !there.has(id));
  return [
    ...gone.map((id) => `The ${words} ${id} is in the log and no longer in the case.`),
    ...kept.flatMap((row) => {
      const said = logged.get(String(row.id));
      if (said === undefined) return [`The ${words} ${row.id} is in the case and not in its log.`];
      const differing = Object.keys({ ...said, ...row }).filter(
        (key) => canonicalJson(said[key] ?? null) !== canonicalJson(row[key] ?? null),
      );
      return differing.length === 0
        ? []
        : [`The ${words} ${row.id} is not what the log says: ${differing.join(', ')} was changed.`];
    }),
  ];
}

function fileProblems(store: FileStore, kept: readonly Kept[]): readonly string[] {
  const names = new Map(kept.map(({ sha256, fileName }) => [String(sha256), String(fileName)]));
  return [...names].flatMap(([sha256, fileName]) => {
    if (!store.has(sha256)) return [`The file “${fileName}” (${sha256}) is missing.`];
    return sha256Hex(readFileSync(store.pathOf(sha256))) === sha256
      ? []
      : [`The file “${fileName}” (${sha256}) was changed: its content has another hash.`];
  });
}
