import { and, asc, eq } from 'drizzle-orm';
import type { JudgementChange, Narrative, Standing } from '~/lib/case/record';
import type { Actor } from './actor';
import { write, type Tx } from './change';
import type { Db } from './open';
import { judgementChange, narrative, person, standing } from './schema';

const EMPTY: Narrative = { summary: '', determination: '', signatories: '' };

/** Saves the investigator's own words; what is not given stays as it is. */
export function saveNarrative(db: Db, caseId: string, given: Partial<Narrative>, actor: Actor): void {
  write(db, caseId, actor, (tx) => {
    const before = readNarrative(tx, caseId);
    const after: Narrative = { ...before, ...given };
    if (
      before.summary === after.summary &&
      before.determination === after.determination &&
      before.signatories === after.signatories
    )
      return { result: undefined, change: null };
    tx.insert(narrative)
      .values({ caseId, ...after })
      .onConflictDoUpdate({ target: narrative.caseId, set: after })
      .run();
    return {
      result: undefined,
      change: { action: 'update', subject: { kind: 'narrative', id: null }, before, after },
    };
  });
}

/** Sets an explanation aside, or says that it stands, with the reason. */
export function setStanding(
  db: Db,
  caseId: string,
  given: Pick<Standing, 'explanation' | 'standing' | 'reason'>,
  actor: Actor,
): void {
  write(db, caseId, actor, (tx, at) => {
    const before = readStandings(tx, caseId).find((row) => row.explanation === given.explanation) ?? null;
    const after: Standing = {
      explanation: given.explanation,
      standing: given.standing,
      reason: given.reason,
      personId: personOfCase(tx, caseId, actor),
      at,
    };
    tx.insert(standing)
      .values({ caseId, ...after })
      .onConflictDoUpdate({ target: [standing.caseId, standing.explanation], set: after })
      .run();
    return {
      result: undefined,
      change: { action: 'set', subject: { kind: 'standing', id: given.explanation }, before, after },
    };
  });
}

/** Takes back what `setStanding` said; the log keeps it. */
export function clearStanding(db: Db, caseId: string, explanation: string, actor: Actor): void {
  write(db, caseId, actor, (tx) => {
    const before = readStandings(tx, caseId).find((row) => row.explanation === explanation);
    if (before === undefined) return { result: undefined, change: null };
    tx.delete(standing)
      .where(and(eq(standing.caseId, caseId), eq(standing.explanation, explanation)))
      .run();
    return {
      result: undefined,
      change: { action: 'clear', subject: { kind: 'standing', id: explanation }, before, after: null },
    };
  });
}

/** Changes one value of the judgement tables for this case, with the reason. */
export function setJudgement(
  db: Db,
  caseId: string,
  given: Pick<JudgementChange, 'path' | 'value' | 'reason'>,
  actor: Actor,
): void {
  write(db, caseId, actor, (tx, at) => {
    const before = readJudgements(tx, caseId).find((row) => row.path === given.path) ?? null;
    const after: JudgementChange = {
      path: given.path,
      value: given.value,
      reason: given.reason,
      personId: personOfCase(tx, caseId, actor),
      at,
    };
    tx.insert(judgementChange)
      .values({ caseId, ...after })
      .onConflictDoUpdate({ target: [judgementChange.caseId, judgementChange.path], set: after })
      .run();
    return {
      result: undefined,
      change: { action: 'set', subject: { kind: 'judgement', id: given.path }, before, after },
    };
  });
}

/** Goes back to the judgement of the tables; the log keeps the change. */
export function clearJudgement(db: Db, caseId: string, path: string, actor: Actor): void {
  write(db, caseId, actor, (tx) => {
    const before = readJudgements(tx, caseId).find((row) => row.path === path);
    if (before === undefined) return { result: undefined, change: null };
    tx.delete(judgementChange)
      .where(and(eq(judgementChange.caseId, caseId), eq(judgementChange.path, path)))
      .run();
    return {
      result: undefined,
      change: { action: 'clear', subject: { kind: 'judgement', id: path }, before, after: null },
    };
  });
}

/** The one entering may be known from another case: then only the name in the log says who it was. */
function personOfCase(tx: Tx, caseId: string, actor: Actor): string | null {
  if (actor.personId === null) return null;
  const found = tx
    .select({ id: person.id })
    .from(person)
    .where(and(eq(person.caseId, caseId), eq(person.id, actor.personId)))
    .get();
  return found?.id ?? null;
}

export function readNarrative(db: Db | Tx, caseId: string): Narrative {
  const row = db.select().from(narrative).where(eq(narrative.caseId, caseId)).get();
  return row === undefined
    ? EMPTY
    : { summary: row.summary, determination: row.determination, signatories: row.signatories };
}

export const readStandings = (db: Db | Tx, caseId: string): readonly Standing[] =>
  db
    .select()
    .from(standing)
    .where(eq(standing.caseId, caseId))
    .orderBy(asc(standing.explanation))
    .all()
    .map(({ caseId: _, ...row }) => row);

export const readJudgements = (db: Db | Tx, caseId: string): readonly JudgementChange[] =>
  db
    .select()
    .from(judgementChange)
    .where(eq(judgementChange.caseId, caseId))
    .orderBy(asc(judgementChange.path))
    .all()
    .map(({ caseId: _, ...row }) => row);
