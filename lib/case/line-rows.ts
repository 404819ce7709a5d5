import { currentReadings, standing } from './current';
import type { CaseRecord } from './record';

/** A row of the line's profile as it stands: distances from the POD, m; null where it says nothing. */
export type LineRowPlace = {
  readonly fromM: number;
  /** Same as `fromM` for a point. */
  readonly toM: number;
  readonly hasGrade: boolean;
  readonly hasCurvature: boolean;
};

/** Rows that stand in the case, those without a distance left out. */
export function standingLineRows(record: CaseRecord): readonly LineRowPlace[] {
  const values = new Map<string, number>();
  for (const { subject, quantity, value } of currentReadings(record))
    if (subject.kind === 'lineStretch' && value !== null) values.set(`${subject.id} ${quantity}`, value);
  return standing(record, 'lineStretch').flatMap(({ id }): readonly LineRowPlace[] => {
    const fromM = values.get(`${id} lineFrom`);
    if (fromM === undefined) return [];
    return [
      {
        fromM,
        toM: values.get(`${id} lineTo`) ?? fromM,
        hasGrade: values.has(`${id} lineGrade`),
        hasCurvature: values.has(`${id} lineCurvature`),
      },
    ];
  });
}

const startOf = ({ fromM, toM }: LineRowPlace): number => Math.min(fromM, toM);
const endOf = ({ fromM, toM }: LineRowPlace): number => Math.max(fromM, toM);

/** Rows closer together than this meet and do not overlap, m. */
const MEETS_M = 0.01;

/**
 * Pairs of rows that say something of the same place: a stretch that begins before another has
 * ended, or a point within a stretch. Two points at one place are a step and no pair.
 */
export function overlappingRows(rows: readonly LineRowPlace[]): readonly (readonly [number, number])[] {
  const order = rows.map((_, row) => row).sort((a, b) => startOf(rows[a]!) - startOf(rows[b]!));
  const found: (readonly [number, number])[] = [];
  let reach: number | null = null;
  for (const row of order) {
    if (
      reach !== null &&
      endOf(rows[reach]!) - startOf(rows[row]!) > MEETS_M &&
      endOf(rows[row]!) - startOf(rows[reach]!) > MEETS_M
    )
      found.push(reach < row ? [reach, row] : [row, reach]);
    if (reach === null || endOf(rows[row]!) > endOf(rows[reach]!)) reach = row;
  }
  return found;
}
