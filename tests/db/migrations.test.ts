import Database from 'better-sqlite3';
import { drizzle } from 'drizzle-orm/better-sqlite3';
import { migrate } from 'drizzle-orm/better-sqlite3/migrator';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readEntities } from '~/db/entities';
import { openDatabase } from '~/db/open';

const MIGRATIONS = join(import.meta.dirname, '../../db/migrations');

/** A data folder as a program made it that knew the migrations before `tag` only. */
function folderBefore(tag: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'flangemark-migrations-'));
  const known = join(folder, 'known');
  cpSync(MIGRATIONS, known, { recursive: true });
  const path = join(known, 'meta', '_journal.json');
  const journal = JSON.parse(readFileSync(path, 'utf8')) as { entries: { tag: string }[] };
  const upTo = journal.entries.findIndex((entry) => entry.tag === tag);
  expect(upTo).toBeGreaterThan(0);
  writeFileSync(path, JSON.stringify({ ...journal, entries: journal.entries.slice(0, upTo) }));
  const client = new Database(join(folder, 'flangemark.sqlite'));
  migrate(drizzle(client), { migrationsFolder: known });
  client.exec(`
    INSERT INTO case_file (id, created_at, number, title, units, rule_set)
      VALUES ('case', '2031-04-09', 'D-001', 'Milepost 12', 'us', 'us-49cfr213');
    INSERT INTO rail (id, case_id, sort_order, created_at, rail, "where", section, rolled, disturbance)
      VALUES ('rail', 'case', 0, '2031-04-09', 'right', 'POD', '136RE', '1998', 'undisturbed');
  `);
  client.close();
  return folder;
}

describe('a database of an older program', () => {
  it('keeps its rails, each the stock rail of none, when rails learn to be one', () => {
    const folder = folderBefore('0005_stock_rail');
    const db = openDatabase(folder);
    const rails = readEntities(db, 'case', 'rail');
    expect(rails).toHaveLength(1);
    expect(rails[0]?.fields).toMatchObject({ section: '136RE', rolled: '1998', stockRailOf: null });
    expect(db.$client.pragma('foreign_key_check')).toEqual([]);
    db.$client.close();
    rmSync(folder, { recursive: true });
  });
});
