import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { caseHead, readCase } from '~/db/cases';
import { addEntity } from '~/db/entities';
import { readLog, verifyLog } from '~/db/log';
import { addRecorderRun, readRecorderRun, removeRecorderRun, restoreRecorderRun } from '~/db/recorder';
import { fromSamples, toSamples } from '~/db/samples';
import { sha256Hex } from '~/lib/custody/canonical';
import { DIMENSIONS } from '~/lib/readings/unit';
import { RECORDER_CHANNELS } from '~/lib/case/recorder';
import { ACTOR, openWithCase } from './opened';

const META = {
  name: 'Lead unit',
  vehicleId: null,
  fileName: 'lead.csv',
  sha256: 'a'.repeat(64),
  clockOffsetS: -12.5,
  note: '',
};
const series = (rows: number) => [
  { channel: 'time', unit: 's', values: Float64Array.from({ length: rows }, (_, i) => i / 10) },
  {
    channel: 'speed',
    unit: 'mph',
    values: Float64Array.from({ length: rows }, (_, i) => (i % 7 === 3 ? NaN : Math.sin(i) * 10)),
  },
];

describe('recorder runs', () => {
  it.each([1, 16_384, 16_385, 40_000])('gives %d samples back to the last bit, gaps included', (rows) => {
    const { db, caseId } = openWithCase();
    const given = series(rows);
    const id = addRecorderRun(db, caseId, META, given, ACTOR);
    const back = readRecorderRun(db, id);
    expect(Object.keys(back)).toEqual(['time', 'speed']);
    for (const { channel, values } of given)
      expect(
        Buffer.from((back[channel] ?? new Float64Array()).buffer).equals(Buffer.from(values.buffer)),
      ).toBe(true);
    expect(readCase(db, caseId)?.recorderRuns).toEqual([
      {
        ...META,
        id,
        rows,
        channels: { time: 's', speed: 'mph' },
        removed: null,
        createdAt: expect.any(String),
      },
    ]);
  });

  it('keeps any bits through its bytes, also from the middle of a larger array', () => {
    fc.assert(
      fc.property(fc.float64Array(), fc.nat(3), (values, skip) => {
        const part = values.subarray(Math.min(skip, values.length));
        const back = fromSamples(toSamples(part));
        expect(Buffer.from(back.buffer).equals(Buffer.from(part.slice().buffer))).toBe(true);
      }),
      { seed: 3, numRuns: 200 },
    );
    expect(toSamples(Float64Array.of(1)).toString('hex')).toBe('000000000000f03f');
  });

  it('seals the samples in the log', () => {
    const { db, caseId } = openWithCase();
    const given = series(50);
    addRecorderRun(db, caseId, META, given, ACTOR);
    const [entry] = readLog(db, caseId, { limit: 1 });
    expect(entry).toMatchObject({
      action: 'import',
      after: {
        sha256: META.sha256,
        channels: given.map(({ channel, unit, values }) => ({
          channel,
          unit,
          samplesSha256: sha256Hex(new Uint8Array(values.buffer)),
        })),
      },
    });
    expect(verifyLog(db, caseId).ok).toBe(true);
  });

  it.each([
    ['no samples', () => []],
    ['series of two lengths', () => [...series(5).slice(0, 1), ...series(6).slice(1)]],
    [
      'a channel there is not',
      () => [...series(5), { channel: 'mood', unit: '1', values: new Float64Array(5) }],
    ],
    ['a channel given twice', () => [...series(5), ...series(5).slice(0, 1)]],
  ])('keeps nothing of a run with %s', (_, wrong) => {
    const { db, caseId } = openWithCase();
    const head = caseHead(db, caseId);
    expect(() => addRecorderRun(db, caseId, META, wrong(), ACTOR)).toThrow();
    expect(readCase(db, caseId)?.recorderRuns).toEqual([]);
    expect(db.$client.prepare('select count(*) from recorder_chunk').pluck().get()).toBe(0);
    expect(caseHead(db, caseId)).toBe(head);
  });

  it('removes a run with a reason and keeps its samples, and restores it', () => {
    const { db, caseId } = openWithCase();
    const vehicle = { position: 1, mark: 'ABCX', number: '1', type: 'locomotive' };
    const vehicleId = addEntity(db, caseId, 'vehicle', vehicle, ACTOR);
    const id = addRecorderRun(db, caseId, { ...META, vehicleId }, series(5), ACTOR);
    removeRecorderRun(db, caseId, id, 'wrong unit', ACTOR);
    expect(readCase(db, caseId)?.recorderRuns[0]).toMatchObject({
      vehicleId,
      removed: { reason: 'wrong unit' },
    });
    expect(readRecorderRun(db, id).time).toHaveLength(5);
    expect(() => db.$client.exec('delete from recorder_chunk')).toThrow('never overwritten');
    restoreRecorderRun(db, caseId, id, ACTOR);
    expect(readCase(db, caseId)?.recorderRuns[0]?.removed).toBeNull();
  });
});

describe('channels', () => {
  it('are read in units of their own dimension', () => {
    for (const { dimension, units, bareUnit } of RECORDER_CHANNELS) {
      const known: readonly string[] = DIMENSIONS[dimension].units;
      for (const unit of [...units, bareUnit.us, bareUnit.metric]) expect(known).toContain(unit);
    }
    expect(new Set(RECORDER_CHANNELS.map(({ id }) => id)).size).toBe(RECORDER_CHANNELS.length);
  });
});
