import { desc, eq } from 'drizzle-orm';
import type { Json } from '~/lib/custody/canonical';
import { canonicalJson } from '~/lib/custody/canonical';
import { linkHash, type ChainLink } from '~/lib/custody/chain';
import type { Actor } from './actor';
import type { Db } from './open';
import { changeLog } from './schema';

/** The part of the database a write may use: everything in it stands or falls together. */
export type Tx = Parameters<Parameters<Db['transaction']>[0]>[0];

export type Change = {
  readonly action: string;
  readonly subject: ChainLink['subject'];
  readonly before: Json;
  readonly after: Json;
};

/**
 * Runs the work and appends what it changed to the log of the case, in one transaction that holds
 * the write lock from its start. Work that returns no change leaves no entry.
 */
export function write<T>(
  db: Db,
  caseId: string,
  actor: Actor,
  work: (tx: Tx, at: string) => { readonly result: T; readonly change: Change | null },
): T {
  const at = new Date().toISOString();
  return db.transaction(
    (tx) => {
      const { result, change } = work(tx, at);
      if (change !== null) append(tx, caseId, actor, at, change);
      return result;
    },
    { behavior: 'immediate' },
  );
}

function append(tx: Tx, caseId: string, actor: Actor, at: string, change: Change): void {
  const last = tx
    .select({ seq: changeLog.seq, hash: changeLog.hash })
    .from(changeLog)
    .where(eq(changeLog.caseId, caseId))
    .orderBy(desc(changeLog.seq))
    .limit(1)
    .get();
  const link: ChainLink = {
    prevHash: last?.hash ?? '',
    seq: (last?.seq ?? 0) + 1,
    at,
    actor: { personId: actor.personId, name: actor.name },
    ...change,
  };
  tx.insert(changeLog)
    .values({
      caseId,
      seq: link.seq,
      at,
      actorPersonId: actor.personId,
      actorName: actor.name,
      action: change.action,
      subjectKind: change.subject.kind,
      subjectId: change.subject.id,
      before: canonicalJson(change.before),
      after: canonicalJson(change.after),
      prevHash: link.prevHash,
      hash: linkHash(link),
    })
    .run();
}
