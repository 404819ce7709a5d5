import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { afterAll, describe, expect, it } from 'vitest';
import { readCase } from '~/db/cases';
import { fileStore } from '~/db/files';
import { readStagedImport } from '~/db/imports';
import { readLog } from '~/db/log';
import { openDatabase } from '~/db/open';
import { readRecorderRun } from '~/db/recorder';
import { verifyCase } from '~/db/verify';

const ROOT = join(import.meta.dirname, '../..');
const folder = mkdtempSync(join(tmpdir(), 'flangemark-crash-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const sha256 = (content: Uint8Array): string => createHash('sha256').update(content).digest('hex');

/** Where the kill falls: within an import, within a file, or some time after so many acknowledgements. */
type Blow =
  | { readonly within: 'import' | 'file'; readonly at: number }
  | { readonly within: 'anywhere'; readonly afterLines: number; readonly delayMs: number };

/** A small linear congruential generator (Numerical Recipes, constants 1664525 and 1013904223). */
function seeded(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

const next = seeded(20310409);
const BLOWS: readonly Blow[] = [
  { within: 'import', at: 1 + next(39) },
  { within: 'file', at: 1 + next(39) },
  { within: 'anywhere', afterLines: 2 + next(12), delayMs: next(25) },
  { within: 'import', at: 1 + next(39) },
  { within: 'anywhere', afterLines: 2 + next(12), delayMs: next(25) },
];

/** Runs the child, kills it where the blow says, and gives every whole line it wrote. */
function killed(blow: Blow): Promise<{ readonly lines: readonly string[]; readonly signal: string | null }> {
  const pause = blow.within === 'anywhere' ? [] : [blow.within, String(blow.at)];
  const child = spawn(
    process.execPath,
    ['--import', 'tsx', join(import.meta.dirname, 'crash-child.ts'), folder, ...pause],
    { cwd: ROOT, stdio: ['ignore', 'pipe', 'inherit'] },
  );
  const lines: string[] = [];
  createInterface({ input: child.stdout }).on('line', (line) => {
    lines.push(line);
    if (line === `inside ${blow.within}`) child.kill('SIGKILL');
    if (blow.within === 'anywhere' && lines.length === blow.afterLines)
      setTimeout(() => child.kill('SIGKILL'), blow.delayMs);
  });
  return new Promise((resolve) => child.on('close', (_, signal) => resolve({ lines, signal })));
}

const acknowledged: string[] = [];

describe('a killed process', () => {
  it.each(BLOWS)(
    'loses nothing acknowledged and leaves nothing half: %j',
    { timeout: 60_000 },
    async (blow) => {
      const { lines, signal } = await killed(blow);
      expect(signal).toBe('SIGKILL');
      acknowledged.push(...lines);

      const db = openDatabase(folder);
      try {
        expect(db.$client.pragma('integrity_check', { simple: true })).toBe('ok');
        expect(db.$client.pragma('foreign_key_check')).toEqual([]);

        const said = (what: string) =>
          acknowledged
            .filter((line) => line.startsWith(`done ${what} `))
            .map((line) => line.split(' ').slice(2));
        const caseId = said('case')[0]?.[0] ?? '';
        const record = readCase(db, caseId);
        if (record === null) throw new Error('The case is gone.');
        const store = fileStore(folder);
        expect(verifyCase(db, store, caseId)).toEqual({ ok: true, problems: [] });

        const stations = new Set(record.entities.station.map((row) => row.id));
        const readings = new Set(record.readings.map((row) => row.id));
        for (const ids of said('import'))
          expect(ids.filter((id) => !stations.has(id) && !readings.has(id))).toEqual([]);
        for (const [id = ''] of said('reading')) expect(readings.has(id)).toBe(true);

        for (const [hash = ''] of said('file')) expect(sha256(readFileSync(store.pathOf(hash)))).toBe(hash);
        for (const [id, hash] of said('photo'))
          expect(record.photos.find((photo) => photo.id === id)?.sha256).toBe(hash);
        for (const [id, hash] of said('trace'))
          expect(record.traces.find((trace) => trace.id === id)?.sha256).toBe(hash);
        for (const photo of record.photos) expect(store.has(photo.sha256)).toBe(true);
        for (const shelf of readdirSync(join(folder, 'files')).filter((name) => name !== 'unfinished'))
          for (const name of readdirSync(join(folder, 'files', shelf)))
            expect(sha256(readFileSync(store.pathOf(name)))).toBe(name);

        for (const [id = '', seal] of said('run'))
          expect(sha256(new Uint8Array((readRecorderRun(db, id).speed ?? new Float64Array()).buffer))).toBe(
            seal,
          );
        for (const run of record.recorderRuns)
          expect(Object.values(readRecorderRun(db, run.id)).map((values) => values.length)).toEqual([
            run.rows,
            run.rows,
            run.rows,
          ]);

        const log = readLog(db, caseId, { limit: 100_000 });
        const imports = log.filter((entry) => entry.action === 'import');
        const stationImports = imports.filter((entry) => entry.subjectKind === 'station').length;
        expect(stations.size).toBe(40 * stationImports);
        expect(record.recorderRuns).toHaveLength(imports.length - stationImports);
        const single = log.filter((entry) => entry.subjectKind === 'reading').length;
        expect(readings.size).toBe(80 * stationImports + single);

        // One staged file per import that did not finish; none of one that did.
        const staged = acknowledged.filter((line) => line.startsWith('staged '));
        const waiting = staged.filter((line) => readStagedImport(db, caseId, line.slice(7)) !== null);
        expect(waiting).toHaveLength(staged.length - stationImports);
        if (blow.within === 'import') expect(waiting).toContain(staged.at(-1));
        if (blow.within === 'file')
          expect(readdirSync(join(folder, 'files', 'unfinished')).length).toBeGreaterThan(0);
      } finally {
        db.$client.close();
      }
    },
  );
});
