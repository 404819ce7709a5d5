import { and, eq } from 'drizzle-orm';
import type { SubjectRef } from '~/lib/case/record';
import type { Tx } from './change';
import { entityTable } from './entity-tables';

/** A subject may be of any kind, so a foreign key cannot hold it to its case; this does. */
export function requireSubject(tx: Tx, caseId: string, subject: SubjectRef): void {
  if (subject.kind === 'case') {
    if (subject.id !== caseId) throw new Error('The subject is another case.');
    return;
  }
  const table = entityTable(subject.kind);
  const found = tx
    .select({ id: table.id })
    .from(table)
    .where(and(eq(table.caseId, caseId), eq(table.id, subject.id)))
    .get();
  if (found === undefined) throw new Error(`The ${subject.kind} is not in this case.`);
}
