import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { facingTravel } from '~/lib/case/facing';
import { findings } from '~/lib/findings';
import { trackChartData } from '~/lib/figures/track-chart-data';
import { buildRecord, type RecordSpec } from '../findings/record-builder';

const TIMEOUT_MS = 30_000;
const AGAINST = [{ quantity: 'sheetFacing', state: 'against' }] as const;

type At = { readonly gauge: number; readonly level: number; readonly line: number; readonly down: number };

/** Zero as anybody enters it. */
const plain = (value: number): number => (value === 0 ? 0 : value);

/** The same track read facing the direction of travel, or turned round as a crew facing the other way has it. */
function sheet(all: readonly At[], curve: boolean, way: 'travel' | 'against'): RecordSpec {
  const back = way === 'against';
  const side = (rail: 'left' | 'right'): 'left' | 'right' =>
    back ? (rail === 'left' ? 'right' : 'left') : rail;
  const sign = back && !curve ? -1 : 1;
  return {
    fields: { alignment: curve ? (back ? 'curveRight' : 'curveLeft') : 'tangent', trackClass: '3' },
    readings: back ? AGAINST : [],
    station: all.map(({ gauge, level, line, down }, index) => ({
      id: `s${index}`,
      fields: {
        name: String(index),
        disturbance: 'undisturbed',
        joint: side(index % 2 === 0 ? 'left' : 'right'),
      },
      readings: [
        { quantity: 'stationPosition', value: plain((back ? -1 : 1) * (index - all.length + 1) * 4.7244) },
        { quantity: 'gauge', value: gauge },
        { quantity: 'crosslevel', value: plain(sign * level) },
        { quantity: 'midOrdinate62', value: line },
        { quantity: 'lateralMovement', slot: side('left'), value: down, id: `s${index}.moved` },
        { quantity: 'verticalMovement', slot: side('left'), value: down, id: `s${index}.down` },
        { quantity: 'verticalMovement', slot: side('right'), value: down / 2, id: `s${index}.down2` },
      ],
    })),
    mark: [
      {
        id: 'm1',
        fields: { type: 'flangeOnHead', rail: side('right'), isPod: true },
        readings: [
          { quantity: back ? 'markEnd' : 'markStart', value: 0, id: 'm1.a' },
          { quantity: back ? 'markStart' : 'markEnd', value: back ? -1.5 : 1.5, id: 'm1.b' },
        ],
      },
    ],
  };
}

const station = fc.record({
  gauge: fc.integer({ min: 1425, max: 1480 }),
  level: fc.integer({ min: -90, max: 90 }),
  line: fc.integer({ min: 0, max: 200 }),
  down: fc.integer({ min: 0, max: 20 }),
});

describe('a sheet read facing against the direction of travel', () => {
  it(
    'gives the findings and the chart it would have given read facing it',
    () => {
      fc.assert(
        fc.property(fc.array(station, { minLength: 3, maxLength: 14 }), fc.boolean(), (all, curve) => {
          const facing = buildRecord(sheet(all, curve, 'travel'));
          const against = buildRecord(sheet(all, curve, 'against'));
          expect(findings(against, { seed: 1 })).toEqual(findings(facing, { seed: 1 }));
          expect(trackChartData(against)).toEqual(trackChartData(facing));
        }),
        { seed: 213, numRuns: 15 },
      );
    },
    TIMEOUT_MS,
  );

  it('leaves the record as it is when nothing was said, or said the usual way', () => {
    const record = buildRecord(sheet([{ gauge: 1435, level: 0, line: 0, down: 0 }], true, 'travel'));
    expect(facingTravel(record)).toBe(record);
  });

  it('keeps what was entered, and a mark of which one end was read', () => {
    const record = buildRecord({
      readings: AGAINST,
      mark: [
        {
          id: 'm1',
          fields: { type: 'other', rail: 'left' },
          readings: [{ quantity: 'markStart', entered: '12 ft' }],
        },
      ],
    });
    const start = facingTravel(record).readings.find(({ subject }) => subject.kind === 'mark');
    expect(start).toMatchObject({ quantity: 'markStart', entered: '12 ft' });
    expect(start?.value).toBeCloseTo(-12 * 0.3048, 9);
  });
});
