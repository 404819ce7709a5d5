import { describe, expect, it } from 'vitest';
import type { LoadedCase } from '~/app/case.server';
import { inTrainOrder } from '~/app/wheels/order.server';
import { buildRecord } from '~/tests/findings/record-builder';

const wheelset = (id: string, vehicle: string, axle: number, firstDerailed = false) => ({
  id,
  fields: { vehicle, axle, firstDerailed },
});

describe('wheelsets in the list', () => {
  it('start with what came off first, then follow the train and the vehicle', () => {
    const record = buildRecord({
      vehicle: [
        { id: 'last', fields: { position: 30 } },
        { id: 'first', fields: { position: 4 } },
        { id: 'off', fields: { position: 17, firstDerailed: true } },
      ],
      wheelset: [
        wheelset('30-1', 'last', 1),
        wheelset('4-2', 'first', 2),
        wheelset('4-1', 'first', 1),
        wheelset('17-4', 'off', 4),
        wheelset('17-3', 'off', 3, true),
        wheelset('nowhere', 'gone', 1),
      ],
    });
    const order = inTrainOrder({ record } as unknown as LoadedCase);
    expect([...record.entities.wheelset].sort(order).map(({ id }) => id)).toEqual([
      '17-3',
      '17-4',
      '4-1',
      '4-2',
      '30-1',
      'nowhere',
    ]);
  });

  it('puts the leading truck before the trailing one', () => {
    const record = buildRecord({
      vehicle: [{ id: 'off', fields: { position: 17 } }],
      truck: [
        { id: 'trailing', fields: { vehicle: 'off', end: 'trailing' } },
        { id: 'leading', fields: { vehicle: 'off', end: 'leading' } },
      ],
    });
    const order = inTrainOrder({ record } as unknown as LoadedCase);
    expect([...record.entities.truck].sort(order).map(({ id }) => id)).toEqual(['leading', 'trailing']);
  });
});
