import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { currentReadings } from '~/lib/case/current';
import { findings } from '~/lib/findings';
import { keyInputs } from '~/lib/findings/key-inputs';
import { missing } from '~/lib/findings/missing';
import { DIMENSIONS } from '~/lib/readings/unit';
import { randomRecord } from './random-record';
import { stationSheet, buildRecord, range } from './record-builder';

const RUNS = { numRuns: 150, seed: 20260301 };
const options = { seed: 7 };

describe('findings of any half-filled case', () => {
  it('never throw, are finite, have unique ids and rest on standing readings of the case', () => {
    fc.assert(
      fc.property(randomRecord, (record) => {
        const all = findings(record, options);
        const standing = new Map(currentReadings(record).map((reading) => [reading.id, reading]));
        expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
        for (const finding of all) {
          expect(finding.method.sources.length).toBeGreaterThan(0);
          if (finding.kind === 'notMeasured') {
            expect(finding.missing.length).toBeGreaterThan(0);
            continue;
          }
          expect(finding.readings.length).toBeGreaterThan(0);
          for (const id of finding.readings) expect(standing.has(id)).toBe(true);
          if (finding.kind === 'passFail') {
            expect(finding.readings.every((id) => standing.get(id)?.state !== null)).toBe(true);
          }
          if (finding.kind !== 'measured') continue;
          expect(Number.isFinite(finding.value), `${finding.id} ${finding.value}`).toBe(true);
          expect(finding.u, finding.id).toBeGreaterThanOrEqual(0);
          expect(DIMENSIONS[finding.dimension]).toBeDefined();
          for (const limit of finding.limits) {
            expect(limit.probabilityExceeds).toBeGreaterThanOrEqual(0);
            expect(limit.probabilityExceeds).toBeLessThanOrEqual(1);
          }
        }
      }),
      RUNS,
    );
  });

  it('never use a reading that was disturbed, repaired or pass/fail for a number', () => {
    fc.assert(
      fc.property(randomRecord, (record) => {
        const byId = new Map(record.readings.map((reading) => [reading.id, reading]));
        const inputs = Object.values(keyInputs(record, options)).flatMap(({ measured }) =>
          measured === null ? [] : measured.readings,
        );
        const used = findings(record, options).flatMap((finding) =>
          finding.kind === 'measured' ? finding.readings : [],
        );
        for (const id of [...used, ...inputs]) {
          const reading = byId.get(id);
          expect(['undisturbed', 'notSaid']).toContain(reading?.disturbance);
          expect(['pass', 'fail']).not.toContain(reading?.state);
        }
      }),
      RUNS,
    );
  });

  it('are the same again, and what is missing never throws', () => {
    fc.assert(
      fc.property(randomRecord, (record) => {
        expect(findings(record, options)).toEqual(findings(record, options));
        expect(missing(record).every(({ text }) => text !== '')).toBe(true);
      }),
      { ...RUNS, numRuns: 30 },
    );
  });
});

describe('one more reading', () => {
  it('does not change the findings it has nothing to do with', () => {
    const sheet = (steps: readonly number[]) =>
      stationSheet(steps, { gauge: () => '56 9/16', crosslevel: () => '3', midOrdinate62: () => '6' });
    const of = (steps: readonly number[]) =>
      findings(
        buildRecord({
          fields: { alignment: 'curveLeft', trackClass: '2' },
          readings: [{ quantity: 'speedAtPod', entered: '25 mph' }],
          station: sheet(steps),
        }),
        options,
      );
    const before = new Map(of(range(-12, 0)).map((finding) => [finding.id, finding]));
    const after = of(range(-30, 0)).find(({ id }) => id === 'unbalance');
    expect(after).toEqual(before.get('unbalance'));
  });
});
