import { sql, type SQL } from 'drizzle-orm';

/** The values of a column that takes only these, as they stand inside `in (…)`. */
export const oneOf = (values: readonly string[]): SQL =>
  sql.raw(values.map((value) => `'${value}'`).join(', '));
