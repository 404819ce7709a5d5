import { describe, expect, it } from 'vitest';
import { asReadMethod } from '~/lib/findings/as-read';
import type { Finding } from '~/lib/findings/finding';
import { makeReferences, ranges } from '~/lib/report/references';
import { plainText } from '~/lib/report/type/inline';
import { inventedTrace } from '../case/invented-trace';
import { buildRecord } from '../findings/record-builder';

const record = buildRecord({
  rail: [
    {
      id: 'r',
      readings: [
        { quantity: 'verticalLoss', entered: '1/8' },
        { quantity: 'gaugeFaceLoss', entered: '1/4' },
        { quantity: 'gaugeFaceAngle', entered: '70' },
      ],
    },
  ],
  mark: [{ id: 'm' }],
});
const ids = record.readings.map(({ id }) => id);
const finding: Finding = {
  id: 'f',
  what: 'f',
  title: 'f',
  part: 'rails',
  subject: null,
  method: asReadMethod,
  remarks: [],
  kind: 'measured',
  value: 1,
  u: 0.1,
  dimension: 'crossLength',
  readings: [ids[0]!, ids[1]!],
  limits: [],
};

describe('references', () => {
  it('write numbers in a row as ranges', () => {
    expect(ranges([9, 3, 4, 5, 5])).toEqual([
      [3, 5],
      [9, 9],
    ]);
  });

  it('cite readings by their numbers, in order, as links', () => {
    const refs = makeReferences(record, [], [], []);
    expect(plainText(refs.cite([ids[2]!, ids[0]!]))).toBe('R1, R3');
    expect(refs.cite(ids).map(({ goTo }) => goTo)).toEqual(['R1']);
    expect(plainText(refs.cite(ids))).toBe('R1–R3');
  });

  it('cite outlines by their numbers, beside the readings', () => {
    const traces = [inventedTrace({ id: 'first' }), inventedTrace({ id: 'second' })];
    const refs = makeReferences({ ...record, traces }, [], [], []);
    expect(refs.ofReading('second')).toBe('T2');
    expect(plainText(refs.cite(['second', ids[0]!]))).toBe('R1, T2');
    expect(refs.cite(['first']).map(({ goTo }) => goTo)).toEqual(['T1']);
  });

  it('cite a printed finding in place of the readings behind it', () => {
    const refs = makeReferences(record, [finding], [finding], []);
    const cited = refs.citeRefs([
      { kind: 'finding', id: 'f' },
      ...ids.map((id) => ({ kind: 'reading' as const, id })),
      { kind: 'mark', id: 'm' },
    ]);
    expect(plainText(cited)).toBe(' [mark 1, F1, R3]');
  });

  it('cite the readings behind a finding that is not printed', () => {
    const refs = makeReferences(record, [], [finding], []);
    expect(plainText(refs.citeRefs([{ kind: 'finding', id: 'f' }]))).toBe(' [R1, R2]');
  });

  it('say nothing for what is not printed', () => {
    expect(makeReferences(record, [], [], []).citeRefs([{ kind: 'fact', id: 'x' }])).toEqual([]);
  });
});
