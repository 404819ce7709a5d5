import { and, asc, desc, eq, lt } from 'drizzle-orm';
import type { Json } from '~/lib/custody/canonical';
import { chainProblems, type ChainLink } from '~/lib/custody/chain';
import type { Db } from './open';
import { changeLog } from './schema';

export type LogEntry = {
  readonly seq: number;
  readonly at: string;
  readonly actorPersonId: string | null;
  readonly actorName: string;
  readonly action: string;
  readonly subjectKind: string;
  readonly subjectId: string | null;
  readonly before: Json;
  readonly after: Json;
  readonly prevHash: string;
  readonly hash: string;
};

type Row = typeof changeLog.$inferSelect;

const parsed = (json: string): Json => JSON.parse(json) as Json;

const toEntry = ({ caseId: _, ...row }: Row): LogEntry => ({
  ...row,
  before: parsed(row.before),
  after: parsed(row.after),
});

/** Entries of the log, newest first; `before` is the seq to continue below. */
export function readLog(
  db: Db,
  caseId: string,
  { before, limit }: { readonly before?: number; readonly limit: number },
): readonly LogEntry[] {
  const below = before === undefined ? undefined : lt(changeLog.seq, before);
  return db
    .select()
    .from(changeLog)
    .where(and(eq(changeLog.caseId, caseId), below))
    .orderBy(desc(changeLog.seq))
    .limit(limit)
    .all()
    .map(toEntry);
}

const toLink = (row: Row): ChainLink & { readonly hash: string } => ({
  prevHash: row.prevHash,
  seq: row.seq,
  at: row.at,
  actor: { personId: row.actorPersonId, name: row.actorName },
  action: row.action,
  subject: { kind: row.subjectKind, id: row.subjectId },
  before: parsed(row.before),
  after: parsed(row.after),
  hash: row.hash,
});

/** Computes the hash chain of the case anew and lists, in words, every place where it is broken. */
export function verifyLog(
  db: Db,
  caseId: string,
): { readonly ok: boolean; readonly problems: readonly string[] } {
  const rows = db
    .select()
    .from(changeLog)
    .where(eq(changeLog.caseId, caseId))
    .orderBy(asc(changeLog.seq))
    .all();
  const problems = rows.length === 0 ? ['The case has no log.'] : chainProblems(rows.map(toLink));
  return { ok: problems.length === 0, problems };
}
