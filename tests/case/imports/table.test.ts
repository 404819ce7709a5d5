import { describe, expect, it } from 'vitest';
import { readCsv, type CsvSheet } from '~/lib/case/imports/csv';
import { mappingProblems, proposeMapping } from '~/lib/case/imports/mapping';
import { previewTable } from '~/lib/case/imports/table';
import { targetsOf, usualUnit } from '~/lib/case/imports/target';

function sheetOf(text: string): CsvSheet {
  const sheet = readCsv(text);
  if (!sheet.ok) throw new Error(sheet.message);
  return sheet.value;
}

const stationTargets = targetsOf('stations');
const usual = (id: string): string | null => {
  const target = stationTargets.find((one) => one.id === id);
  return target === undefined ? null : usualUnit(target, 'us');
};

describe('matching columns', () => {
  it('knows a column by its label or id, with or without its unit', () => {
    const mapping = proposeMapping(
      ['Station', 'Distance from the POD (m)', 'Gauge, standing [mm]', 'Elsewhere'],
      stationTargets,
      null,
      usual,
    );
    expect(mapping).toEqual({
      Station: { target: 'name', unit: null },
      'Distance from the POD (m)': { target: 'stationPosition', unit: 'm' },
      'Gauge, standing [mm]': { target: 'gauge', unit: 'mm' },
    });
  });

  it('prefers what the railroad matched before, and matches nothing twice', () => {
    const remembered = { Breite: { target: 'gauge', unit: 'mm' } };
    const mapping = proposeMapping(['Gauge, standing', 'Breite'], stationTargets, remembered, usual);
    expect(mapping).toEqual({ Breite: { target: 'gauge', unit: 'mm' } });
  });

  it('asks for what is needed and tells of a target used twice', () => {
    const mapping = { a: { target: 'gauge', unit: 'in' }, b: { target: 'gauge', unit: 'in' } };
    const problems = mappingProblems(mapping, stationTargets);
    expect(problems).toContainEqual(expect.stringContaining('“Station”'));
    expect(problems).toContainEqual(expect.stringContaining('“Distance from the POD”'));
    expect(problems).toContainEqual(expect.stringContaining('matched to two columns'));
  });
});

describe('previewing stations', () => {
  const mapping = {
    Sta: { target: 'name', unit: null },
    Ft: { target: 'stationPosition', unit: 'ft' },
    G: { target: 'gauge', unit: 'in' },
  };
  const common = { disturbance: 'undisturbed' };

  it('reads each cell in the unit of its column, whatever the case is worked in', () => {
    const preview = previewTable(
      'stations',
      sheetOf('Sta,Ft,G\n-1,-15.5,56 3/4\n'),
      mapping,
      'metric',
      common,
    );
    expect(preview.problems).toEqual([]);
    const [row] = preview.rows;
    expect(row?.fields).toMatchObject({ name: '-1', disturbance: 'undisturbed' });
    expect(row?.readings).toEqual([
      expect.objectContaining({
        quantity: 'stationPosition',
        entered: '-15.5',
        unit: 'ft',
        value: expect.closeTo(-4.7244, 6),
      }),
      expect.objectContaining({
        quantity: 'gauge',
        entered: '56 3/4',
        unit: 'in',
        value: expect.closeTo(1441.45, 6),
      }),
    ]);
  });

  it('names every bad cell by row and column, and goes on', () => {
    const preview = previewTable(
      'stations',
      sheetOf('Sta,Ft,G\n-1,-15.5,-56\n-1,abc,56 1/0\n-3,,57\n'),
      mapping,
      'us',
      common,
    );
    expect(preview.problems.map(({ row, column }) => `${row} ${column}`)).toEqual([
      '2 G',
      '3 Ft',
      '3 G',
      '3 name',
      '4 Ft',
    ]);
  });

  it('leaves empty cells out: a missing reading is no reading', () => {
    const preview = previewTable('stations', sheetOf('Sta,Ft,G\n-1,-15.5,\n'), mapping, 'us', common);
    expect(preview.rows[0]?.readings.map((one) => one.quantity)).toEqual(['stationPosition']);
  });
});

describe('previewing a consist', () => {
  it('reads fields and readings, and refuses one position given twice', () => {
    const mapping = {
      Pos: { target: 'position', unit: null },
      Mark: { target: 'mark', unit: null },
      No: { target: 'number', unit: null },
      Type: { target: 'type', unit: null },
      Weight: { target: 'grossWeight', unit: 'ton' },
    };
    const text =
      'Pos,Mark,No,Type,Weight\n1,QFV,1,Locomotive,134\n1,QFV,2,boxcar,100\nx,QFV,3,zeppelin,100\n';
    const preview = previewTable('consist', sheetOf(text), mapping, 'us', {});
    expect(preview.rows[0]).toMatchObject({
      fields: { position: 1, type: 'locomotive' },
      readings: [{ quantity: 'grossWeight', unit: 'ton' }],
    });
    expect(preview.rows[0]?.readings[0]?.value).toBeCloseTo(121_562.76, 1);
    expect(preview.problems.map(({ row, column }) => `${row} ${column}`).sort()).toEqual([
      '3 position',
      '4 Pos',
      '4 Type',
    ]);
  });
});
