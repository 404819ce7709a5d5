import type { Finding } from './finding';

/** Lists of findings as one. A sheet of thousands of stations makes them long, and `flatMap` goes item by item. */
export const gathered = (lists: readonly (readonly Finding[])[]): readonly Finding[] =>
  ([] as readonly Finding[]).concat(...lists);
