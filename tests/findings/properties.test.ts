import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { currentReadings } from '~/lib/case/current';
import type { CaseRecord, Reading } from '~/lib/case/record';
import { findings } from '~/lib/findings';
import type { Finding } from '~/lib/findings/finding';
import { keyInputs } from '~/lib/findings/key-inputs';
import { METHODS } from '~/lib/findings/methods';
import { missing } from '~/lib/findings/missing';
import { DIMENSIONS } from '~/lib/readings/unit';
import { randomRecord } from './random-record';
import { stationSheet, buildRecord, range } from './record-builder';

const RUNS = { numRuns: 40, seed: 20260301 };
const TIMEOUT_MS = 30_000;
const options = { seed: 7 };

const LISTED = new Set(METHODS.map(({ id }) => id));

const standingOf = (record: CaseRecord): ReadonlyMap<string, Reading> =>
  new Map(currentReadings(record).map((reading) => [reading.id, reading]));

/** What is wrong with a finding, in words; empty when nothing is. */
function faults(finding: Finding, standing: ReadonlyMap<string, Reading>): readonly string[] {
  const say = (wrong: boolean, what: string): readonly string[] => (wrong ? [`${finding.id}: ${what}`] : []);
  const sources = say(!LISTED.has(finding.method.id), `method ${finding.method.id} is not in the list`);
  if (finding.kind === 'notMeasured')
    return [...sources, ...say(finding.missing.length === 0, 'nothing named')];
  const readings = finding.readings.map((id) => standing.get(id));
  const shared = [
    ...sources,
    ...say(readings.length === 0 || readings.includes(undefined), 'rests on no standing reading'),
    ...say(
      readings.some((reading) => reading?.disturbance === 'disturbed' || reading?.disturbance === 'repaired'),
      'rests on a disturbed reading',
    ),
  ];
  const checks = readings.filter((reading) => reading?.state === 'pass' || reading?.state === 'fail').length;
  // A go/no-go check, or an answer to a question that a requirement hangs on.
  const answers = readings.filter((reading) => typeof reading?.state === 'string').length;
  if (finding.kind === 'passFail')
    return [...shared, ...say(answers !== readings.length, 'no check or answer behind it')];
  if (finding.kind === 'outOfRange') return [...shared, ...say(finding.why === '', 'does not say why')];
  return [
    ...shared,
    ...say(checks > 0, 'a number from a go/no-go check'),
    ...say(!Number.isFinite(finding.value), `value ${finding.value}`),
    ...say(!(finding.u >= 0 && Number.isFinite(finding.u)), `uncertainty ${finding.u}`),
    ...say(DIMENSIONS[finding.dimension] === undefined, 'unknown dimension'),
    ...finding.limits.flatMap(({ probabilityExceeds: p, name }) =>
      say(!(p >= 0 && p <= 1), `probability ${p} of ${name}`),
    ),
  ];
}

describe('findings of any half-filled case', () => {
  it(
    'never throw, are finite, have unique ids and rest on standing undisturbed readings',
    () => {
      const kinds = new Set<string>();
      fc.assert(
        fc.property(randomRecord, (record) => {
          const all = findings(record, options);
          expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
          const standing = standingOf(record);
          expect(all.flatMap((finding) => faults(finding, standing))).toEqual([]);
          for (const { what, kind } of all) kinds.add(`${what} ${kind}`);
        }),
        RUNS,
      );
      // The cases are no use to this test unless they reach the computed findings too.
      for (const what of [
        'climbLimit',
        'dropInShare',
        'warpWorst',
        'unbalance',
        'backToBackSwing',
        'hollowCheck',
      ]) {
        expect(
          [...kinds].some((kind) => kind === `${what} measured` || kind === `${what} passFail`),
          what,
        ).toBe(true);
      }
    },
    TIMEOUT_MS,
  );

  it(
    'are the same again; key inputs rest on readings too, and what is missing never throws',
    () => {
      fc.assert(
        fc.property(randomRecord, (record) => {
          expect(findings(record, options)).toEqual(findings(record, options));
          expect(missing(record).every(({ text }) => text !== '')).toBe(true);
          const standing = standingOf(record);
          const wrong = Object.values(keyInputs(record, options)).flatMap(({ id, measured }) =>
            measured === null
              ? []
              : measured.readings.flatMap((reading) => {
                  const found = standing.get(reading);
                  return found === undefined || found.disturbance === 'disturbed'
                    ? [`${id}: ${reading}`]
                    : [];
                }),
          );
          expect(wrong).toEqual([]);
        }),
        { ...RUNS, numRuns: 8 },
      );
    },
    TIMEOUT_MS,
  );
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
