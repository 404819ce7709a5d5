import { describe, expect, it } from 'vitest';
import { readCsv } from '~/lib/case/imports/csv';
import { lineProblems } from '~/lib/case/imports/line-problems';
import { proposeMapping } from '~/lib/case/imports/mapping';
import { previewTable, type TablePreview } from '~/lib/case/imports/table';
import { targetsOf, usualUnit } from '~/lib/case/imports/target';
import { overlappingRows, standingLineRows, type LineRowPlace } from '~/lib/case/line-rows';
import { buildRecord } from '../../findings/record-builder';

const targets = targetsOf('line');

function previewOf(text: string, system: 'us' | 'metric' = 'us'): TablePreview {
  const sheet = readCsv(text);
  if (!sheet.ok) throw new Error(sheet.message);
  const mapping = proposeMapping(sheet.value.header, targets, null, (id) => {
    const target = targets.find((each) => each.id === id);
    return target === undefined ? null : usualUnit(target, system);
  });
  return previewTable('line', sheet.value, mapping, system, {});
}

const valuesOf = ({ rows }: TablePreview): readonly Readonly<Record<string, number | null>>[] =>
  rows.map(({ readings }) => Object.fromEntries(readings.map((each) => [each.quantity, each.value])));

const FT = 0.3048;
const DEGREE = 1 / (5729.577951308232 * FT);

describe('rows of a line’s profile', () => {
  it('are read from usual column names, in feet, per cent and degrees', () => {
    const preview = previewOf('MP,From,To,Grade (%),Curve,Hand\n41.7,-500,0,-1.2,,\n41.6,-450,-100,,6,L\n');
    expect(preview.problems).toEqual([]);
    expect(preview.rows.map(({ fields }) => [fields.name, fields.hand])).toEqual([
      ['41.7', null],
      ['41.6', 'left'],
    ]);
    const [grade, curve] = valuesOf(preview);
    expect(grade?.lineFrom).toBeCloseTo(-500 * FT, 9);
    expect(grade?.lineGrade).toBeCloseTo(-0.012, 12);
    expect(curve?.lineCurvature).toBeCloseTo(6 * DEGREE, 6);
  });

  it('are read in metres and metres of radius, tangent by its name, and tabs between as pasted', () => {
    const preview = previewOf('From (m)\tTo (m)\tRadius (m)\n-300\t-200\ttangent\n-140\t0\t350\n', 'metric');
    expect(preview.problems).toEqual([]);
    const [tangent, curve] = valuesOf(preview);
    expect(tangent).toEqual({ lineFrom: -300, lineTo: -200, lineCurvature: 0 });
    expect(curve?.lineCurvature).toBeCloseTo(1 / 350, 12);
  });

  it('need a distance', () => {
    const { problems } = previewOf('From,Grade\n,0.4\n');
    expect(problems.map(({ row, column }) => [row, column])).toEqual([[2, 'From']]);
  });

  it('may not say nothing, nor two things of one place, in the file or in the case', () => {
    const { rows } = previewOf(
      'From,To,Grade,Curve\n-500,0,1,\n-100,200,0.5,\n300,400,,\n-600,300,,4\n400,,-1,\n',
    );
    const there: readonly LineRowPlace[] = [
      { fromM: 350 * FT, toM: 500 * FT, hasGrade: true, hasCurvature: false },
    ];
    const problems = lineProblems(rows, 'From', there);
    expect(problems.map(({ row }) => row).sort()).toEqual([3, 4, 6]);
    expect(problems.find(({ row }) => row === 3)?.message).toContain('row 2');
    expect(problems.find(({ row }) => row === 4)?.message).toContain('neither grade nor curvature');
    expect(problems.find(({ row }) => row === 6)?.message).toContain('the case has already');
  });
});

describe('overlappingRows', () => {
  const place = (fromM: number, toM: number): LineRowPlace => ({
    fromM,
    toM,
    hasGrade: true,
    hasCurvature: true,
  });

  it('lets rows meet, points lie at an end, and two points make a step', () => {
    expect(overlappingRows([place(0, 100), place(100, 200), place(200, 200), place(200, 200)])).toEqual([]);
    expect(overlappingRows([place(100, 0), place(0, 0)])).toEqual([]);
  });

  it('finds a row within another, whichever way its ends are written', () => {
    expect(overlappingRows([place(0, 100), place(60, 40)])).toEqual([[0, 1]]);
    expect(overlappingRows([place(50, 50), place(100, 0)])).toEqual([[0, 1]]);
    expect(overlappingRows([place(0, 300), place(10, 20), place(250, 400)])).toEqual([
      [0, 1],
      [0, 2],
    ]);
  });
});

describe('standingLineRows', () => {
  it('leaves out rows without a distance and rows taken out', () => {
    const grade = { quantity: 'lineGrade', value: 0.01 };
    const record = buildRecord({
      lineStretch: [
        {
          id: 'a',
          readings: [{ quantity: 'lineFrom', value: -10 }, { quantity: 'lineTo', value: 5 }, grade],
        },
        { id: 'b', readings: [grade] },
        {
          id: 'c',
          removed: { at: '2026-03-02T00:00:00.000Z', reason: 'twice' },
          readings: [{ quantity: 'lineFrom', value: 0 }, grade],
        },
      ],
    });
    expect(standingLineRows(record)).toEqual([{ fromM: -10, toM: 5, hasGrade: true, hasCurvature: false }]);
  });
});
