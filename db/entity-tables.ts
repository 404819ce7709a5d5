import type { SQLiteTable } from 'drizzle-orm/sqlite-core';
import type { EntityKind } from '~/lib/case/record';
import type { EntityTable } from './schema/entity';
import {
  instrument,
  lineStretch,
  mark,
  person,
  rail,
  statement,
  station,
  truck,
  turnout,
  vehicle,
  wheelDefect,
  wheelset,
} from './schema';

const TABLES = {
  person,
  instrument,
  vehicle,
  lineStretch,
  mark,
  station,
  wheelset,
  wheelDefect,
  truck,
  rail,
  turnout,
  statement,
} satisfies Record<EntityKind, SQLiteTable>;

/**
 * The tables are written to with fields checked against their kind, so one type stands for all;
 * a test compares each table's columns with the fields of its kind.
 */
export const entityTable = (kind: EntityKind): EntityTable => TABLES[kind] as unknown as EntityTable;
