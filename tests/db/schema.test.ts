import { generateSQLiteDrizzleJson, generateSQLiteMigration } from 'drizzle-kit/api';
import { getTableConfig, type SQLiteTable } from 'drizzle-orm/sqlite-core';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { entityTable } from '~/db/entity-tables';
import * as schema from '~/db/schema';
import type { Field, Kind } from '~/lib/case/kind';
import { caseKind, KINDS } from '~/lib/case/kinds';
import { ENTITY_KINDS } from '~/lib/case/record';
import { openFresh } from './opened';

const OWN_COLUMNS = ['id', 'caseId', 'sortOrder', 'createdAt', 'removedAt', 'removedReason'];

const SQL_TYPE: Readonly<Record<Field['type'], string>> = {
  text: 'text',
  choice: 'text',
  date: 'text',
  dateTime: 'text',
  ref: 'text',
  integer: 'integer',
  flag: 'integer',
};

const snakeCase = (id: string): string => id.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);

const fieldsAsColumns = (kind: Kind) =>
  Object.fromEntries(
    kind.fields.map((field) => [
      field.id,
      {
        name: snakeCase(field.id),
        type: SQL_TYPE[field.type],
        boolean: field.type === 'flag',
        notNull: field.required === true,
      },
    ]),
  );

const columnsOf = (table: SQLiteTable, except: readonly string[]) => {
  const keyOf = new Map(Object.entries(table).map(([key, column]) => [column, key]));
  return Object.fromEntries(
    getTableConfig(table)
      .columns.map((column) => ({ key: keyOf.get(column) ?? '', column }))
      .filter(({ key }) => !except.includes(key))
      .map(({ key, column }) => [
        key,
        {
          name: column.name,
          type: column.getSQLType(),
          boolean: column.dataType === 'boolean',
          notNull: column.notNull,
        },
      ]),
  );
};

describe('schema', () => {
  it.each(ENTITY_KINDS)('has a column for every field of %s, and no other', (kind) => {
    expect(columnsOf(entityTable(kind), OWN_COLUMNS)).toEqual(fieldsAsColumns(KINDS[kind]));
  });

  it('has a column for every field of a case, and no other', () => {
    expect(columnsOf(schema.caseFile, ['id', 'createdAt'])).toEqual(fieldsAsColumns(caseKind));
  });

  it.each(ENTITY_KINDS)('holds every reference of %s to its own case', (kind) => {
    const keys = getTableConfig(entityTable(kind)).foreignKeys.map((key) => {
      const { columns, foreignColumns, foreignTable } = key.reference();
      return [
        columns.map((column) => column.name),
        getTableConfig(foreignTable).name,
        foreignColumns.map((column) => column.name),
      ];
    });
    for (const field of KINDS[kind].fields)
      if (field.type === 'ref')
        expect(keys).toContainEqual([
          ['case_id', snakeCase(field.id)],
          snakeCase(field.to),
          ['case_id', 'id'],
        ]);
  });

  it('is what the migrations make', async () => {
    const meta = join(import.meta.dirname, '../../db/migrations/meta');
    const newest = readdirSync(meta)
      .filter((name) => name.endsWith('_snapshot.json'))
      .sort()
      .at(-1);
    const snapshot: Parameters<typeof generateSQLiteMigration>[0] = JSON.parse(
      readFileSync(join(meta, newest ?? ''), 'utf8'),
    );
    const current = await generateSQLiteDrizzleJson({ ...schema }, snapshot.id);
    expect(await generateSQLiteMigration(snapshot, current)).toEqual([]);
  });

  it('opens with a write-ahead log, full sync and foreign keys', () => {
    const { $client } = openFresh().db;
    expect($client.pragma('journal_mode', { simple: true })).toBe('wal');
    expect($client.pragma('synchronous', { simple: true })).toBe(2);
    expect($client.pragma('foreign_keys', { simple: true })).toBe(1);
  });
});
