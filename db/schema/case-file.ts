import { sqliteTable, text } from 'drizzle-orm/sqlite-core';

/** Everything else in the case hangs on this row. Fields of lib/case/kinds/case. */
export const caseFile = sqliteTable('case_file', {
  id: text('id').primaryKey(),
  createdAt: text('created_at').notNull(),
  number: text('number').notNull(),
  title: text('title').notNull(),
  occurredAt: text('occurred_at'),
  timeZone: text('time_zone'),
  railroad: text('railroad'),
  subdivision: text('subdivision'),
  milepost: text('milepost'),
  track: text('track'),
  direction: text('direction'),
  trackClass: text('track_class'),
  alignment: text('alignment'),
  trackMaterial: text('track_material'),
  weather: text('weather'),
  narrative: text('narrative'),
  units: text('units').notNull(),
  ruleSet: text('rule_set').notNull(),
});
