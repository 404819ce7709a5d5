import { describe, expect, it } from 'vitest';
import { missing } from '~/lib/findings/missing';
import { GROUPS } from '~/lib/readings/quantities';
import { buildRecord, stationSheet } from './record-builder';

const texts = (record: Parameters<typeof missing>[0]) => missing(record).map(({ text }) => text);

describe('what is missing', () => {
  it('of an empty case is every kind of record and every group about the case', () => {
    const all = texts(buildRecord({}));
    expect(all).toContain('The consist is not entered.');
    expect(all).toContain('No track station is entered.');
    expect(all).toContain('The class of track is not entered: readings are held against no limits.');
    expect(all).toContain('No photo is uploaded.');
    const asked = (text: string) => all.some((line) => line.startsWith(`${text}:`));
    for (const { name, onlyWhere } of GROUPS.filter(({ subject }) => subject === 'case')) {
      expect([name, asked(name)]).toEqual([name, onlyWhere === undefined]);
    }
  });

  it('asks about excepted track where the track is excepted', () => {
    const all = texts(buildRecord({ fields: { trackClass: 'excepted' } }));
    expect(all).toContain('Excepted track: nothing is entered.');
  });

  it('goes when it is entered', () => {
    const observations = GROUPS.find(({ id }) => id === 'markObservations')?.quantities ?? [];
    const record = buildRecord({
      fields: { trackClass: '2' },
      readings: observations.map(({ id }) => ({ quantity: id, state: 'notFound' })),
      mark: [{ id: 'm1', fields: { type: 'flangeOnHead', rail: 'left', isPod: true } }],
    });
    const all = texts(record);
    expect(all.some((text) => text.startsWith('Marks looked for'))).toBe(false);
    expect(all).not.toContain('No mark is entered.');
    expect(missing(record)).toContainEqual({
      screen: 'marks',
      text: 'Not entered how far back of the first mark both rails were searched.',
      subject: { kind: 'mark', id: 'm1' },
    });
  });

  it('counts stations of which nobody said whether they were disturbed', () => {
    const record = buildRecord({
      station: stationSheet([-2, -1, 0], { gauge: () => '57' }, (step) => ({
        disturbance: step === 0 ? 'undisturbed' : 'notSaid',
      })),
    });
    expect(texts(record).join('\n')).toContain('Not said of 2 of 3 stations whether the derailment');
  });

  it('names the single readings of a group that are still empty', () => {
    const record = buildRecord({ station: stationSheet([0], { gauge: () => '57' }) });
    expect(texts(record)).toContain('Gauge and crosslevel: not entered: crosslevel.');
  });

  it('asks for the first derailed vehicle and its wheels', () => {
    const vehicle = { id: 'v1', fields: { position: 1, mark: 'A', number: '1', firstDerailed: true } };
    const record = buildRecord({
      vehicle: [vehicle, { id: 'v2', fields: { position: 2, mark: 'A', number: '2' } }],
      wheelset: [{ id: 'w2', fields: { vehicle: 'v2', axle: 1 } }],
    });
    expect(texts(record)).toContain('No wheelset of the first derailed vehicle is entered.');
    expect(texts(record)).not.toContain('No vehicle is marked as the first to derail.');
  });
});
