import type { Params } from '@remix-run/react';
import type { CaseRecord } from '~/lib/case/record';
import { caseHead, readCase } from '~/db/cases';
import { dataDir, openDatabase, type Db } from '~/db/open';

// Kept on the global object: while developing, modules are loaded anew on each change.
const kept = globalThis as typeof globalThis & { flangemarkDb?: Db };

/** The one open database of this process. */
export const database = (): Db => (kept.flangemarkDb ??= openDatabase(dataDir()));

export type LoadedCase = {
  readonly db: Db;
  readonly caseId: string;
  readonly record: CaseRecord;
  /** Hash of the last entry of the log: names this state of the case. */
  readonly head: string;
};

export const notFound = (message: string): Response => new Response(message, { status: 404 });

/** The case named in the address; throws a 404 that says so when there is none. */
export function loadCase(params: Params): LoadedCase {
  const db = database();
  const caseId = params.caseId ?? '';
  const head = caseHead(db, caseId);
  const record = head === null ? null : readCase(db, caseId);
  if (head === null || record === null) {
    throw notFound('There is no such case. Choose one from the list of cases.');
  }
  return { db, caseId, record, head };
}
