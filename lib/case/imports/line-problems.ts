import { overlappingRows, type LineRowPlace } from '../line-rows';
import type { ImportedRow, RowProblem } from './table';

const valueOf = ({ readings }: ImportedRow, quantity: string): number | null =>
  readings.find((reading) => reading.quantity === quantity)?.value ?? null;

function placeOf(row: ImportedRow): LineRowPlace | null {
  const fromM = valueOf(row, 'lineFrom');
  if (fromM === null) return null;
  return {
    fromM,
    toM: valueOf(row, 'lineTo') ?? fromM,
    hasGrade: valueOf(row, 'lineGrade') !== null,
    hasCurvature: valueOf(row, 'lineCurvature') !== null,
  };
}

const KINDS = [
  { has: 'hasGrade', word: 'grade' },
  { has: 'hasCurvature', word: 'curvature' },
] as const;

/**
 * What is wrong with rows of a line's profile taken together: rows that say neither grade nor
 * curvature, and rows that say two things of one place, among themselves or with `there`, those the
 * case has already. `column` names the column of the distance.
 */
export function lineProblems(
  rows: readonly ImportedRow[],
  column: string,
  there: readonly LineRowPlace[],
): readonly RowProblem[] {
  const places = rows.map(placeOf);
  const empty = rows.flatMap(({ row }, i): readonly RowProblem[] => {
    const place = places[i];
    return place && !place.hasGrade && !place.hasCurvature
      ? [
          {
            row,
            column,
            message: 'The row has neither grade nor curvature. Enter one of them, or take the row out.',
          },
        ]
      : [];
  });
  const twice = KINDS.flatMap(({ has, word }) => {
    const inFile = places.flatMap((place, i) =>
      place?.[has] === true ? [{ place, row: rows[i]!.row }] : [],
    );
    const inCase = there.filter((place) => place[has]).map((place) => ({ place, row: null }));
    const all = [...inFile, ...inCase];
    return overlappingRows(all.map(({ place }) => place)).flatMap(([a, b]): readonly RowProblem[] => {
      const [one, other] = [all[a]!.row, all[b]!.row];
      const row = other ?? one;
      if (row === null) return [];
      const against = one === null || other === null ? 'one that the case has already' : `row ${one}`;
      return [
        {
          row,
          column,
          message: `Says a ${word} where ${against} says one too. Let one end where the other begins.`,
        },
      ];
    });
  });
  return [...empty, ...twice];
}
