import { describe, expect, it } from 'vitest';
import { findingTrail } from '~/app/findings/trail.server';
import { asReadMethod } from '~/lib/findings/as-read';
import type { Finding } from '~/lib/findings/finding';
import { inventedTrace } from '../../case/invented-trace';
import { openWithCase } from '../../db/opened';
import { buildRecord } from '../../findings/record-builder';

describe('what a finding came from', () => {
  it('leads to the page of an outline as it does to that of a reading', () => {
    const record = buildRecord({
      vehicle: [{ id: 'v' }],
      wheelset: [
        {
          id: 'w',
          fields: { vehicle: 'v', axle: 1 },
          readings: [{ quantity: 'flangeHeight', slot: 'left', entered: '1' }],
        },
      ],
      changes: { traces: [inventedTrace(), inventedTrace({ id: 'other' })] },
    });
    const reading = record.readings[0]?.id ?? '';
    const finding: Finding = {
      id: 'f',
      what: 'f',
      title: 'f',
      part: 'wheels',
      subject: { kind: 'wheelset', id: 'w' },
      method: asReadMethod,
      remarks: [],
      kind: 'measured',
      value: 1,
      u: 0.1,
      dimension: 'crossLength',
      readings: [reading, 'trace-1'],
      limits: [],
    };
    const { db } = openWithCase();
    const { sources } = findingTrail({ db, caseId: 'c', record, head: '' }, finding);
    expect(sources.map(({ href, what }) => [href, what])).toEqual([
      [`/cases/c/readings/${reading}`, expect.any(String)],
      ['/cases/c/traces/trace-1', 'Outline, left wheel'],
    ]);
  });
});
