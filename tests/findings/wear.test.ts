import { describe, expect, it } from 'vitest';
import { standing } from '~/lib/case/current';
import { buildContext } from '~/lib/findings/context';
import { wornFeatures } from '~/lib/findings/wheels/wear';
import { found as byId } from './by-id';
import { buildRecord, type ReadingSpec } from './record-builder';

const OPTIONS = { seed: 1 };
const INCH = 25.4;

const on = (day: string, miles: string, thickness: string): readonly ReadingSpec[] => [
  { id: `run ${day}`, quantity: 'distanceRun', entered: miles, takenAt: `${day}T09:00` },
  {
    id: `left ${day}`,
    quantity: 'flangeThickness',
    slot: 'left',
    entered: thickness,
    takenAt: `${day}T09:05`,
  },
];

const record = (readings: readonly ReadingSpec[], disturbance = 'undisturbed') =>
  buildRecord({
    vehicle: [
      {
        id: 'v',
        fields: { position: 1, mark: 'QV', number: '7', type: 'coveredHopper', firstDerailed: true },
      },
    ],
    wheelset: [{ id: 'w', fields: { vehicle: 'v', axle: 1, disturbance }, readings }],
  });

const THREE = [
  ...on('2030-03-01', '20000 mi', '1 3/16'),
  ...on('2031-03-01', '90000 mi', '1 1/8'),
  ...on('2032-03-01', '160000 mi', '1 1/16'),
];

describe('wear from readings with the distance run', () => {
  it('takes the latest size as the size now, and says that earlier ones are history', () => {
    const now = byId(record(THREE), OPTIONS).measured('flangeThickness:w:left');
    expect(now.value).toBeCloseTo((17 / 16) * INCH, 6);
    expect(now.readings).toEqual(['left 2032-03-01']);
    expect(now.remarks.join(' ')).toContain('2 earlier readings of it');
  });

  it('still takes the mean of readings of the same days', () => {
    const twice = byId(
      record([
        { quantity: 'flangeThickness', slot: 'left', entered: '1', takenAt: '2032-03-01T09:00' },
        {
          id: 'again',
          quantity: 'flangeThickness',
          slot: 'left',
          entered: '1 1/16',
          takenAt: '2032-03-02T09:00',
        },
      ]),
      OPTIONS,
    ).measured('flangeThickness:w:left');
    expect(twice.value).toBeCloseTo((33 / 32) * INCH, 6);
    expect(twice.readings).toHaveLength(2);
  });

  it('finds a sixteenth for seventy thousand miles', () => {
    const rate = byId(record(THREE), OPTIONS).measured('wearRate:w:left.flangeThicknessNa');
    expect(rate.value).toBeCloseTo((-INCH / 16) * (100 / 70), 6);
    expect(rate.readings).toEqual(
      expect.arrayContaining(['left 2030-03-01', 'run 2030-03-01', 'left 2032-03-01']),
    );
    expect(rate.u).toBeGreaterThan(0);
    expect(rate.remarks.join(' ')).toContain('215.103');
  });

  it('needs the distance on the day, and an undisturbed wheelset', () => {
    const without = THREE.filter(({ id }) => id !== 'run 2030-03-01' && id !== 'run 2031-03-01');
    for (const each of [record(without), record(THREE, 'disturbed')]) {
      const context = buildContext(each, OPTIONS);
      const [wheelset] = standing(context.record, 'wheelset');
      expect(wheelset && wornFeatures(context, wheelset)).toEqual([]);
    }
  });
});
