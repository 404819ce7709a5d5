import { ok, type Result } from '~/lib/readings/result';
import type { Actor } from './actor';
import { addEntities, updateEntity } from './entities';
import type { Fields } from './fields';
import type { Db } from './open';
import { addReadings, correctReading, withdrawReading, type NewReading } from './readings';

export type StationSheetChanges = {
  readonly added: readonly {
    readonly fields: Fields;
    readonly readings: readonly Omit<NewReading, 'subject'>[];
  }[];
  readonly fields: readonly { readonly id: string; readonly fields: Fields }[];
  readonly readings: readonly NewReading[];
  readonly corrections: readonly { readonly readingId: string; readonly replacement: NewReading }[];
  /** Ids of readings. */
  readonly withdrawals: readonly string[];
  /** Of the corrections and withdrawals; may be empty when there are none. */
  readonly reason: string;
};

class Refused extends Error {}

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Refused(result.message);
  return result.value;
}

/**
 * Saves everything a page of the station sheet changed, all or nothing; answers the ids of the new
 * stations in the order given. Refused when a reading was corrected or withdrawn meanwhile.
 */
export function saveStationSheet(
  db: Db,
  caseId: string,
  changes: StationSheetChanges,
  actor: Actor,
): Result<readonly string[]> {
  try {
    return ok(
      db.transaction(
        () => {
          const ids = addEntities(
            db,
            caseId,
            'station',
            changes.added.map(({ fields }) => fields),
            actor,
          );
          for (const { id, fields } of changes.fields) updateEntity(db, caseId, 'station', id, fields, actor);
          const ofNew = ids.flatMap((id, index) =>
            (changes.added[index]?.readings ?? []).map((reading): NewReading => ({
              ...reading,
              subject: { kind: 'station', id },
            })),
          );
          addReadings(db, caseId, [...ofNew, ...changes.readings], actor);
          for (const { readingId, replacement } of changes.corrections)
            must(correctReading(db, caseId, readingId, replacement, changes.reason, actor));
          for (const readingId of changes.withdrawals)
            must(withdrawReading(db, caseId, readingId, changes.reason, actor));
          return ids;
        },
        { behavior: 'immediate' },
      ),
    );
  } catch (error) {
    if (error instanceof Refused) return { ok: false, message: error.message };
    throw error;
  }
}
