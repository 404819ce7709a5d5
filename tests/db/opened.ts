import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach } from 'vitest';
import type { Actor } from '~/db/actor';
import { createCase } from '~/db/cases';
import { openDatabase, type Db } from '~/db/open';
import type { NewReading } from '~/db/readings';

export const ACTOR: Actor = { personId: null, name: 'R. Examiner' };

export const CASE_FIELDS = {
  number: 'D-001',
  title: 'Covered hopper off at milepost 41.7',
  railroad: 'Invented Short Line',
  units: 'us',
  ruleSet: 'us-49cfr213',
} as const;

const opened: { db: Db; folder: string }[] = [];

afterEach(() => {
  for (const { db, folder } of opened.splice(0)) {
    db.$client.close();
    rmSync(folder, { recursive: true, force: true });
  }
});

/** A database in a folder of its own, closed and removed after the test. */
export function openFresh(): { db: Db; folder: string } {
  const folder = mkdtempSync(join(tmpdir(), 'flangemark-'));
  const entry = { db: openDatabase(folder), folder };
  opened.push(entry);
  return entry;
}

export function openWithCase(): { db: Db; folder: string; caseId: string } {
  const entry = openFresh();
  return { ...entry, caseId: createCase(entry.db, CASE_FIELDS, ACTOR) };
}

export const newReading = (subject: NewReading['subject'], given: Partial<NewReading> = {}): NewReading => ({
  subject,
  quantity: 'station.gauge',
  slot: '',
  entered: '56 1/2',
  unit: 'in',
  value: 1435.1,
  state: null,
  examined: null,
  instrumentId: null,
  personId: null,
  takenAt: null,
  disturbance: 'undisturbed',
  sampling: 'every',
  note: '',
  ...given,
});
