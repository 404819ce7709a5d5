import type { Context, Station } from './context';
import { oncePerContext } from './once-per-context';
import type { ColumnRead } from './column-read';
import { LEFT_OUT_WORDS, type LeftOutWhy } from './reading-state';

/** One quantity down the sheet: an entry for each station of the context, in order of position. */
export type Column = ColumnRead & {
  /** Says how many stations were left out, which and why; empty when none. */
  readonly remarks: readonly string[];
  readonly count: number;
};

const stationIds = oncePerContext(({ stations }): readonly string[] => stations.map(({ id }) => id));

const columnsOf = oncePerContext(() => new Map<string, Column>());

export function stationColumn(context: Context, quantity: string, slot: string = ''): Column {
  const columns = columnsOf(context);
  const key = `${quantity}|${slot}`;
  const before = columns.get(key);
  if (before !== undefined) return before;
  const column = readColumn(context, quantity, slot);
  columns.set(key, column);
  return column;
}

function readColumn(context: Context, quantity: string, slot: string): Column {
  const { read, stations, unplaced } = context;
  const column = read.column(stationIds(context), quantity, slot);
  const lost = unplaced.filter(({ id }) => read.take('station', id, quantity, slot) !== null);
  return {
    ...column,
    remarks: [
      ...leftOutRemarks(stations, column.leftOut),
      ...(lost.length === 0
        ? []
        : [
            `${countOf(lost.length)} without a distance from the POD left out: ${list(
              lost.map(({ fields }) => String(fields.name ?? '?')),
            )}.`,
          ]),
    ],
    count: countRead(column.values),
  };
}

function countRead(values: Float64Array): number {
  let count = 0;
  for (let index = 0; index < values.length; index += 1) if (!Number.isNaN(values[index])) count += 1;
  return count;
}

/** Remarks on the stations that feed nothing, one per reason. */
export function leftOutRemarks(
  stations: readonly Station[],
  leftOut: readonly (LeftOutWhy | null)[],
): readonly string[] {
  const names: Record<LeftOutWhy, string[]> = { disturbed: [], repaired: [], notSaid: [] };
  for (let index = 0; index < leftOut.length; index += 1) {
    const why = leftOut[index];
    if (why) names[why].push(stations[index]?.name ?? '?');
  }
  return (['disturbed', 'repaired', 'notSaid'] as const).flatMap((why) =>
    names[why].length === 0
      ? []
      : [`${countOf(names[why].length)} left out, ${LEFT_OUT_WORDS[why]}: ${list(names[why])}.`],
  );
}

const countOf = (count: number): string => (count === 1 ? '1 station' : `${count} stations`);

const MOST_NAMED = 40;

const list = (names: readonly string[]): string =>
  names.length <= MOST_NAMED
    ? names.join(', ')
    : `${names.slice(0, MOST_NAMED).join(', ')} and ${names.length - MOST_NAMED} more`;
