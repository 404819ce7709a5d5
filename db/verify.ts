import { readFileSync } from 'node:fs';
import { canonicalJson, sha256Hex } from '~/lib/custody/canonical';
import type { FileStore } from './files';
import { keptRows, type KeptKind } from './kept-rows';
import { verifyLog } from './log';
import type { Db } from './open';
import { replayLog, type Kept, type KeptFile } from './replayed';

/** Kinds whose row names a file of the file store. */
const WITH_FILE = new Set(['photo', 'recorderRun', 'trace', 'ownShape']);

/**
 * Computes the log anew, then what it says of everything in the case, and holds that against what is
 * kept: every row, samples and points, and every file. Lists every difference in words.
 * `photoFiles` false leaves out the content of photos, which takes its time: that they are there is looked at.
 */
export function verifyCase(
  db: Db,
  store: FileStore,
  caseId: string,
  { photoFiles }: { readonly photoFiles: boolean } = { photoFiles: true },
): { readonly ok: boolean; readonly problems: readonly string[] } {
  const kept = keptRows(db, caseId);
  const logged = replayLog(db, caseId);
  const filesOf = (kinds: (kind: string) => boolean): readonly KeptFile[] =>
    kept.flatMap(({ kind, rows }) => (kinds(kind) ? rows.map(toFile) : []));
  const problems = [
    ...verifyLog(db, caseId).problems,
    ...kept.flatMap((each) => rowProblems(each, logged.rows.get(each.kind) ?? new Map<string, Kept>())),
    ...fileProblems(store, [...filesOf((kind) => kind !== 'photo' && WITH_FILE.has(kind)), ...logged.files]),
    ...fileProblems(
      store,
      filesOf((kind) => kind === 'photo'),
      photoFiles,
    ),
  ];
  return { ok: problems.length === 0, problems };
}

const toFile = ({ sha256, fileName }: Kept): KeptFile => ({
  sha256: String(sha256),
  fileName: String(fileName),
});

function rowProblems({ words, rows }: KeptKind, logged: ReadonlyMap<string, Kept>): readonly string[] {
  const there = new Set(rows.map(({ id }) => id));
  const gone = [...logged.keys()].filter((id) => !there.has(id));
  return [
    ...gone.map((id) => `The ${words} ${id} is in the log and no longer in the case.`),
    ...rows.flatMap((row) => {
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

function fileProblems(
  store: FileStore,
  kept: readonly KeptFile[],
  content: boolean = true,
): readonly string[] {
  const names = new Map(kept.map(({ sha256, fileName }) => [sha256, fileName]));
  return [...names].flatMap(([sha256, fileName]) => {
    if (!store.has(sha256)) return [`The file “${fileName}” (${sha256}) is missing.`];
    return !content || sha256Hex(readFileSync(store.pathOf(sha256))) === sha256
      ? []
      : [`The file “${fileName}” (${sha256}) was changed: its content has another hash.`];
  });
}
