import { sql } from 'drizzle-orm';
import {
  check,
  foreignKey,
  index,
  integer,
  real,
  sqliteTable,
  text,
  unique,
  uniqueIndex,
} from 'drizzle-orm/sqlite-core';
import { DISTURBANCES, SAMPLINGS, type Disturbance, type Sampling } from '~/lib/case/record';
import type { SubjectKind } from '~/lib/readings/quantity';
import { caseFile } from './case-file';
import { refersTo } from './entity';
import { instrument } from './instrument';
import { oneOf } from './one-of';
import { person } from './person';

/**
 * Append-only (triggers in the migrations): a correction is a new row that replaces the old one.
 * `seq` keeps the order of entry when two rows carry the same time.
 */
export const reading = sqliteTable(
  'reading',
  {
    seq: integer('seq').primaryKey({ autoIncrement: true }),
    id: text('id').notNull().unique(),
    caseId: text('case_id')
      .notNull()
      .references(() => caseFile.id),
    subjectKind: text('subject_kind').$type<SubjectKind>().notNull(),
    subjectId: text('subject_id').notNull(),
    quantity: text('quantity').notNull(),
    slot: text('slot').notNull(),
    entered: text('entered').notNull(),
    unit: text('unit').notNull(),
    value: real('value'),
    state: text('state'),
    examined: real('examined'),
    instrumentId: text('instrument_id'),
    personId: text('person_id'),
    takenAt: text('taken_at'),
    disturbance: text('disturbance').$type<Disturbance>().notNull(),
    sampling: text('sampling').$type<Sampling>().notNull(),
    note: text('note').notNull(),
    replaces: text('replaces'),
    reason: text('reason'),
    withdrawn: integer('withdrawn', { mode: 'boolean' }).notNull(),
    createdAt: text('created_at').notNull(),
  },
  (t) => [
    index('reading_case').on(t.caseId, t.seq),
    unique('reading_case_id_id').on(t.caseId, t.id),
    uniqueIndex('reading_replaced_once').on(t.replaces),
    foreignKey({ columns: [t.caseId, t.replaces], foreignColumns: [t.caseId, t.id] }),
    refersTo({ caseId: t.caseId, ref: t.instrumentId }, instrument),
    refersTo({ caseId: t.caseId, ref: t.personId }, person),
    check(
      'reading_value_or_state',
      sql`(${t.withdrawn} = 0 and (${t.value} is null) <> (${t.state} is null)) or (${t.withdrawn} = 1 and ${t.value} is null and ${t.state} is null and ${t.replaces} is not null)`,
    ),
    check('reading_value_finite', sql`${t.value} is null or abs(${t.value}) <= 1.7976931348623157e308`),
    check(
      'reading_reason',
      sql`(${t.replaces} is null and ${t.reason} is null) or (${t.replaces} is not null and coalesce(length(${t.reason}), 0) > 0)`,
    ),
    check('reading_not_itself', sql`${t.replaces} is null or ${t.replaces} <> ${t.id}`),
    check(
      'reading_examined',
      sql`${t.examined} is null or (${t.state} is not null and ${t.examined} between 0 and 1)`,
    ),
    check('reading_disturbance', sql`${t.disturbance} in (${oneOf(DISTURBANCES)})`),
    check('reading_sampling', sql`${t.sampling} in (${oneOf(SAMPLINGS)})`),
  ],
);
