import type { CaseRecord } from '../case/record';

/**
 * The record as if a reading had never been taken. What it corrected goes too: leaving out a
 * correction must not bring the error back.
 */
export function withoutReading(record: CaseRecord, readingId: string): CaseRecord {
  const byId = new Map(record.readings.map((reading) => [reading.id, reading] as const));
  const gone = new Set<string>();
  for (let id: string | null = readingId; id !== null && !gone.has(id); id = byId.get(id)?.replaces ?? null) {
    gone.add(id);
  }
  return { ...record, readings: record.readings.filter(({ id }) => !gone.has(id)) };
}

/** The record as if an outline had never been drawn. */
export const withoutTrace = (record: CaseRecord, traceId: string): CaseRecord => ({
  ...record,
  traces: record.traces.filter(({ id }) => id !== traceId),
});
