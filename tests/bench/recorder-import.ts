import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { createCase } from '~/db/cases';
import { openDatabase } from '~/db/open';
import { addRecorderRun } from '~/db/recorder';
import { decodeText, readCsv } from '~/lib/case/imports/csv';
import { proposeMapping } from '~/lib/case/imports/mapping';
import { previewRecorder, RECORDER_TARGETS, usualChannelUnit } from '~/lib/case/imports/recorder';
import type { Result } from '~/lib/readings/result';
import { medianMs, type Measurement } from './measurement';

const ROWS = 100_000;
const ROUNDS = 5;

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.message);
  return result.value;
}

/** Ten samples a second for nearly three hours: every channel moves. */
function samples(): readonly (readonly number[])[] {
  return Array.from({ length: ROWS }, (_, i) => [
    Math.round(i * 0.1 * 10) / 10,
    Math.round(i * 3.7),
    Math.round(250 + 100 * Math.sin(i / 900)) / 10,
    Math.floor(i / 700) % 9,
    Math.floor(i / 1900) % 2,
    90 - (Math.floor(i / 5000) % 3) * 8,
    (Math.floor(i / 5000) % 3) * 12,
    0,
  ]);
}

const HEADER =
  'Time s,Distance ft,Speed mph,Throttle,Dynamic brake,Brake pipe psi,Brake cylinder psi,Emergency';

/** The least that keeps the same rows: numbers already in memory, one statement, one transaction. */
function bareInsert(folder: string, rows: readonly (readonly number[])[], round: number): number {
  const db = new Database(join(folder, `bare-${round}.sqlite`));
  db.pragma('journal_mode = WAL');
  db.pragma('synchronous = FULL');
  db.exec('CREATE TABLE sample (run, seq, t, d, v, throttle, dynamic, pipe, cylinder, emergency)');
  const insert = db.prepare('INSERT INTO sample VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)');
  const start = performance.now();
  db.transaction(() => {
    rows.forEach((row, seq) => insert.run(1, seq, ...row));
  })();
  const spent = performance.now() - start;
  db.close();
  return spent;
}

/** From the bytes of the file to the committed run, as the import screen does it. */
function wholeImport(folder: string, bytes: Uint8Array, round: number): number {
  const db = openDatabase(join(folder, `app-${round}`));
  const actor = { personId: null, name: 'Bench' };
  const caseId = createCase(
    db,
    { number: `B-${round}`, title: 'Bench', units: 'us', ruleSet: 'us-49cfr213' },
    actor,
  );
  const start = performance.now();
  const sheet = must(readCsv(must(decodeText(bytes))));
  const mapping = proposeMapping(sheet.header, RECORDER_TARGETS, null, (id) => usualChannelUnit(id, 'us'));
  const preview = must(previewRecorder(sheet, mapping, 'us'));
  if (preview.problems.length > 0 || preview.series.length !== 8)
    throw new Error('The file was not read whole.');
  const meta = {
    name: 'Bench',
    vehicleId: null,
    fileName: 'b.csv',
    sha256: 'b'.repeat(64),
    clockOffsetS: 0,
    note: '',
  };
  addRecorderRun(db, caseId, meta, preview.series, actor);
  const spent = performance.now() - start;
  db.$client.close();
  return spent;
}

/** Importing 100,000 recorder rows against a bare bulk insert of the same rows, turn and turn about. */
export function recorderImport(): readonly Measurement[] {
  const folder = mkdtempSync(join(tmpdir(), 'flangemark-bench-'));
  try {
    const rows = samples();
    const bytes = new TextEncoder().encode([HEADER, ...rows.map((row) => row.join(','))].join('\n'));
    const bare: number[] = [];
    const whole: number[] = [];
    for (let round = 0; round < ROUNDS; round += 1) {
      bare.push(bareInsert(folder, rows, round));
      whole.push(wholeImport(folder, bytes, round));
    }
    return [
      {
        name: 'recorder-import',
        value: medianMs(whole) / medianMs(bare),
        floor: 2,
        unit: 'times a bare bulk insert',
      },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
