import Database from 'better-sqlite3';
import { drizzle, type BetterSQLite3Database } from 'drizzle-orm/better-sqlite3';
import { migrate } from 'drizzle-orm/better-sqlite3/migrator';
import { existsSync, mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import * as schema from './schema';

export type Db = BetterSQLite3Database<typeof schema> & { readonly $client: Database.Database };

/** The folder that holds the database and the files: FLANGEMARK_DATA, or ./data. */
export const dataDir = (): string =>
  z.object({ FLANGEMARK_DATA: z.string().min(1).default('./data') }).parse(process.env).FLANGEMARK_DATA;

/** Opens the database in the folder, creating both when they are not there, and brings it up to date. */
export function openDatabase(folder: string): Db {
  mkdirSync(folder, { recursive: true });
  const client = new Database(join(folder, 'flangemark.sqlite'));
  client.pragma('busy_timeout = 10000');
  client.pragma('journal_mode = WAL');
  client.pragma('synchronous = FULL');
  const db = drizzle(client, { schema });
  // Rebuilding a table drops it for a moment, which foreign keys would forbid.
  client.pragma('foreign_keys = OFF');
  migrate(db, { migrationsFolder: migrationsFolder() });
  client.pragma('foreign_keys = ON');
  // Without this, INSERT OR REPLACE would slip past the triggers that keep rows from being deleted.
  client.pragma('recursive_triggers = ON');
  return db;
}

/** The built server lies deeper in the tree than this file, so the folder is looked for upwards. */
function migrationsFolder(): string {
  for (let from = dirname(fileURLToPath(import.meta.url)); ; from = dirname(from)) {
    const folder = join(from, 'db', 'migrations');
    if (existsSync(join(folder, 'meta', '_journal.json'))) return folder;
    if (from === dirname(from)) throw new Error('The folder db/migrations is missing beside the program.');
  }
}
