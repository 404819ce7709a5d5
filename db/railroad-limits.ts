import { desc, eq, ne } from 'drizzle-orm';
import type { Json } from '~/lib/custody/canonical';
import type { Actor } from './actor';
import { write, type Tx } from './change';
import { newId } from './id';
import type { Db } from './open';
import { caseFile, railroadLimits } from './schema';

/** Keeps the railroad's own limits as entered; what stood before stays. Read them first: nothing is checked here. */
export function keepRailroadLimits(db: Db, caseId: string, entered: string, actor: Actor): void {
  write(db, caseId, actor, (tx, at) => {
    const before = latest(tx, caseId);
    if (before?.entered === entered) return { result: undefined, change: null };
    const id = newId();
    const version = (before?.version ?? 0) + 1;
    tx.insert(railroadLimits).values({ id, caseId, version, createdAt: at, entered }).run();
    return {
      result: undefined,
      change: {
        action: before === undefined ? 'add' : 'update',
        subject: { kind: 'railroadLimits', id },
        before:
          before === undefined ? null : { id: before.id, version: before.version, entered: before.entered },
        after: { id, version, entered },
      },
    };
  });
}

const latest = (db: Db | Tx, caseId: string) =>
  db
    .select()
    .from(railroadLimits)
    .where(eq(railroadLimits.caseId, caseId))
    .orderBy(desc(railroadLimits.version))
    .limit(1)
    .get();

/** The limits that stand for the case, as entered; null where none were. */
export const readRailroadLimits = (db: Db | Tx, caseId: string): string | null =>
  latest(db, caseId)?.entered ?? null;

export type LimitsElsewhere = { readonly caseId: string; readonly number: string; readonly entered: string };

/** Limits that stand in other cases of the same railroad (by its name), the newest case first. */
export function limitsOfRailroad(db: Db, caseId: string, railroad: string): readonly LimitsElsewhere[] {
  const name = railroad.trim().toLowerCase();
  if (name === '') return [];
  return db
    .select({ id: caseFile.id, number: caseFile.number, railroad: caseFile.railroad })
    .from(caseFile)
    .where(ne(caseFile.id, caseId))
    .orderBy(desc(caseFile.createdAt))
    .all()
    .flatMap(({ id, number, railroad: theirs }) => {
      const entered = theirs?.trim().toLowerCase() === name ? readRailroadLimits(db, id) : null;
      return entered === null ? [] : [{ caseId: id, number, entered }];
    });
}

/** Every version kept, to hold against the log. */
export const keptRailroadLimits = (db: Db, caseId: string): readonly Readonly<Record<string, Json>>[] =>
  db
    .select({ id: railroadLimits.id, version: railroadLimits.version, entered: railroadLimits.entered })
    .from(railroadLimits)
    .where(eq(railroadLimits.caseId, caseId))
    .all();
