import { describe, expect, it } from 'vitest';
import type { WitnessState } from '~/lib/explanations/witness';
import { buildRecord, type ReadingSpec, type RecordSpec } from '../findings/record-builder';
import { gathered } from './invented';

const stateOf = (witness: string, spec: RecordSpec): WitnessState | undefined =>
  gathered(buildRecord(spec)).get(witness)?.state;
const asked = (...readings: readonly ReadingSpec[]): RecordSpec => ({ readings });
const flange = (rest: Partial<ReadingSpec>): ReadingSpec => ({ quantity: 'obsFlangeAcrossHead', ...rest });

describe('the state of an observation', () => {
  it('tells seen, not found, could not tell and not looked for apart', () => {
    expect(stateOf('obsFlangeAcrossHead', asked(flange({ state: 'seen' })))).toEqual({
      kind: 'seen',
      worstOfMany: false,
    });
    expect(stateOf('obsFlangeAcrossHead', asked(flange({ state: 'notFound', examined: 0.6 })))).toEqual({
      kind: 'notFound',
      examined: 0.6,
      examinedSaid: true,
    });
    expect(stateOf('obsFlangeAcrossHead', asked(flange({ state: 'notFound' })))).toMatchObject({
      kind: 'notFound',
      examinedSaid: false,
    });
    expect(
      stateOf('obsFlangeAcrossHead', asked(flange({ state: 'couldNotTell', note: 'Rail gone.' }))),
    ).toEqual({
      kind: 'couldNotTell',
      why: 'Rail gone.',
    });
    expect(stateOf('obsFlangeAcrossHead', {})).toEqual({ kind: 'notLooked' });
  });

  it('is not used beside the same thing read on the spot, so that nothing is counted twice', () => {
    const dry: ReadingSpec = { quantity: 'obsDryGaugeFace', state: 'seen' };
    const face = (rail: string): RecordSpec => ({
      fields: { alignment: 'curveLeft' },
      readings: [dry],
      rail: [
        {
          id: 'r',
          fields: { rail, where: '0', disturbance: 'undisturbed' },
          readings: [{ quantity: 'gaugeFaceCondition', state: 'dryRough' }],
        },
      ],
    });
    expect(stateOf('gaugeFaceCondition', face('right'))?.kind).toBe('outcome');
    expect(stateOf('obsDryGaugeFace', face('right'))).toEqual({
      kind: 'notNeeded',
      why: 'the same thing was read on the spot as “Gauge face feels”',
    });
    // Read on the inner rail it is another thing, and the observation stands.
    expect(stateOf('gaugeFaceCondition', face('left'))?.kind).toBe('notLooked');
    expect(stateOf('obsDryGaugeFace', face('left'))?.kind).toBe('seen');
  });

  it('cannot be told where records disagree', () => {
    const both = asked(
      flange({ state: 'seen', id: 'a' }),
      flange({ state: 'notFound', examined: 1, id: 'b' }),
    );
    expect(stateOf('obsFlangeAcrossHead', both)?.kind).toBe('couldNotTell');
    const againstMark: RecordSpec = {
      ...asked(flange({ state: 'notFound', examined: 1 })),
      mark: [{ id: 'm', fields: { type: 'flangeOnHead', rail: 'right', appearance: 'fresh' } }],
    };
    expect(stateOf('obsFlangeAcrossHead', againstMark)?.kind).toBe('couldNotTell');
  });

  it('is taken from a fresh mark on record when the question was not answered, never from an old one', () => {
    const mark = (appearance: string): RecordSpec => ({
      mark: [{ id: 'm', fields: { type: 'flangeOnHead', rail: 'right', appearance } }],
    });
    expect(stateOf('obsFlangeAcrossHead', mark('fresh'))?.kind).toBe('seen');
    expect(gathered(buildRecord(mark('fresh'))).get('obsFlangeAcrossHead')?.refs).toEqual([
      { kind: 'mark', id: 'm' },
    ]);
    expect(stateOf('obsFlangeAcrossHead', mark('old'))?.kind).toBe('notLooked');
  });

  it('does not use a condition read where the derailment had changed it', () => {
    const ties: ReadingSpec = { quantity: 'obsTiesClustered', state: 'seen' };
    expect(stateOf('obsTiesClustered', asked(ties))?.kind).toBe('seen');
    expect(stateOf('obsTiesClustered', asked({ ...ties, disturbance: 'disturbed' }))?.kind).toBe(
      'couldNotTell',
    );
    expect(stateOf('obsTiesClustered', asked({ ...ties, disturbance: 'repaired' }))?.kind).toBe(
      'couldNotTell',
    );
  });

  it('remembers that it was the worst of many', () => {
    expect(
      stateOf('obsFalseFlange', asked({ quantity: 'obsFalseFlange', state: 'seen', sampling: 'worst' })),
    ).toEqual({
      kind: 'seen',
      worstOfMany: true,
    });
  });

  it('follows a correction and a withdrawal', () => {
    const corrected = asked(
      flange({ state: 'seen', id: 'a' }),
      flange({ state: 'notFound', examined: 1, id: 'b', replaces: 'a', reason: 'wrong rail' }),
    );
    expect(stateOf('obsFlangeAcrossHead', corrected)?.kind).toBe('notFound');
    const withdrawn = asked(
      flange({ state: 'seen', id: 'a' }),
      flange({ id: 'b', replaces: 'a', reason: 'wrong case', withdrawn: true }),
    );
    expect(stateOf('obsFlangeAcrossHead', withdrawn)?.kind).toBe('notLooked');
  });
});

describe('choices, counts and gauges', () => {
  const undisturbed = { disturbance: 'undisturbed' };
  const rail = (id: string, side: string, choice: string): RecordSpec['rail'] => [
    {
      id,
      fields: { rail: side, ...undisturbed },
      readings: [{ quantity: 'contactBand', state: choice }],
    },
  ];

  it('read the running band of the inner rail only', () => {
    const curve = { fields: { alignment: 'curveLeft' } };
    expect(stateOf('contactBand', { ...curve, rail: rail('l', 'left', 'fieldSide') })).toMatchObject({
      kind: 'outcome',
      weights: { fieldSide: 1 },
    });
    expect(stateOf('contactBand', { ...curve, rail: rail('r', 'right', 'fieldSide') })?.kind).toBe(
      'notLooked',
    );
  });

  it('count several readings alike', () => {
    const both = [...(rail('l', 'left', 'fieldSide') ?? []), ...(rail('l2', 'left', 'crown') ?? [])];
    expect(stateOf('contactBand', { fields: { alignment: 'curveLeft' }, rail: both })).toMatchObject({
      weights: { fieldSide: 0.5, crown: 0.5 },
    });
  });

  it('put a count in its band', () => {
    const drawn = (count: string): RecordSpec => ({
      rail: [
        {
          id: 'l',
          fields: { rail: 'left', ...undisturbed },
          readings: [{ quantity: 'gaugeSpikesDrawn', entered: count }],
        },
      ],
    });
    expect(stateOf('gaugeSpikesDrawn', drawn('2'))).toMatchObject({ weights: { from0: 1 } });
    expect(stateOf('gaugeSpikesDrawn', drawn('3'))).toMatchObject({ weights: { from3: 1 } });
    expect(stateOf('gaugeSpikesDrawn', drawn('12'))).toMatchObject({ weights: { from7: 1 } });
  });

  it('use a go/no-go gauge only where no number says more', () => {
    const axle = (readings: readonly ReadingSpec[]): RecordSpec => ({
      fields: { alignment: 'curveLeft' },
      vehicle: [{ id: 'v', fields: { position: 1, firstDerailed: true } }],
      wheelset: [
        { id: 'w', fields: { vehicle: 'v', axle: 1, firstDerailed: true, ...undisturbed }, readings },
      ],
    });
    const failed: ReadingSpec = { quantity: 'flangeThicknessCheck', slot: 'right', state: 'fail' };
    expect(stateOf('flangeThicknessCheck', axle([failed]))).toMatchObject({
      kind: 'outcome',
      weights: { fail: 1 },
    });
    const number: ReadingSpec = { quantity: 'flangeThickness', slot: 'right', entered: '7/8' };
    expect(stateOf('flangeThicknessCheck', axle([failed, number]))?.kind).toBe('notNeeded');
  });
});
