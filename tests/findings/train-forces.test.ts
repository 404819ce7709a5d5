import { describe, expect, it } from 'vitest';
import type { CaseRecord } from '~/lib/case/record';
import type { RunSamples } from '~/lib/case/recorder-moments';
import { findingsOf } from '~/lib/findings';
import { buildContext, recorderPart } from '~/lib/findings/context';
import type { Finding } from '~/lib/findings/finding';
import { RECORDED_SPEED_U, recorderAtPod } from '~/lib/findings/recorder-at-pod';
import { simulatedFindings, simulatedForces } from '~/lib/findings/train/simulated-forces';
import { pulling, run, seconds } from './recorded-run';
import { buildRecord, type EntitySpec, type ReadingSpec, type RecordSpec } from './record-builder';

const braking: RunSamples = {
  ...pulling,
  throttle: seconds.map(() => 0),
  dynamicBrakeNotch: seconds.map(() => 8),
};

const vehicle = (position: number, extra: readonly ReadingSpec[] = []): EntitySpec => ({
  id: `v${position}`,
  fields: {
    position,
    mark: 'TST',
    number: String(position),
    type: position === 1 ? 'locomotive' : 'gondola',
    load: position === 4 ? 'empty' : 'loaded',
    firstDerailed: position === 4,
  },
  readings: [
    { quantity: 'grossWeight', value: position === 4 ? 28_000 : 120_000 },
    { quantity: 'lengthOverPullingFaces', value: 18 },
    { quantity: 'truckCentres', value: 14 },
    { quantity: 'axleCount', value: 4 },
    ...extra,
  ],
});
const RATING: readonly ReadingSpec[] = [
  { quantity: 'tractiveEffortRated', value: 450 },
  { quantity: 'tractiveEffortSpeed', value: 5 },
  { quantity: 'dynamicBrakeFull', value: 300 },
];
const curved = (id: string, positionM: number): EntitySpec => ({
  id,
  fields: { name: id, disturbance: 'undisturbed' },
  readings: [
    { quantity: 'stationPosition', value: positionM },
    // 62-ft chord on a curve of eight degrees.
    { quantity: 'midOrdinate62', value: 204.5 },
    { quantity: 'crosslevel', value: 50 },
  ],
});

const train = (spec: Partial<RecordSpec> = {}): CaseRecord =>
  buildRecord({
    fields: { alignment: 'curveLeft' },
    readings: [
      { quantity: 'gradeAtPod', value: 0.004 },
      { quantity: 'railTemperature', value: 45 },
      { quantity: 'railNeutralTemperature', value: 30 },
    ],
    vehicle: [vehicle(1, RATING), ...[2, 3, 4, 5, 6, 7, 8].map((position) => vehicle(position))],
    station: Array.from({ length: 12 }, (_, i) => curved(`s${i}`, (i - 10) * 4.7244)),
    rail: [
      { id: 'r1', fields: { rail: 'right', where: 'POD', section: '115RE', disturbance: 'undisturbed' } },
    ],
    recorderRuns: [run],
    ...spec,
  });

function found(record: CaseRecord, samples: RunSamples) {
  const atPod = recorderAtPod(record, run, samples, RECORDED_SPEED_U);
  const context = buildContext(record, { seed: 1, recorder: recorderPart(atPod) });
  return { context, findings: findingsOf(context) };
}
const one = (findings: readonly Finding[], what: string): Finding => {
  const finding = findings.find((each) => each.what === what);
  if (finding === undefined) throw new Error(`No finding ${what}`);
  return finding;
};
const value = (findings: readonly Finding[], what: string): number => {
  const finding = one(findings, what);
  if (finding.kind !== 'measured') throw new Error(`${what} is ${finding.kind}`);
  return finding.value;
};

describe('coupler forces at the POD', () => {
  it('are draft under power and buff under dynamic brake, and press to the inside and to the outside', () => {
    const pulled = found(train(), pulling).findings;
    expect(value(pulled, 'couplerForceAhead')).toBeGreaterThan(30);
    expect(value(pulled, 'couplerLateral')).toBeGreaterThan(0);
    expect(value(pulled, 'jackknife')).toBe(0);
    const held = found(train(), braking).findings;
    expect(value(held, 'couplerForceAhead')).toBeLessThan(-30);
    expect(value(held, 'couplerLateral')).toBeLessThan(0);
    expect(value(held, 'jackknife')).toBeGreaterThan(0.01);
  });

  it('carry a range, their readings and the run', () => {
    const finding = one(found(train(), pulling).findings, 'couplerForceAhead');
    if (finding.kind !== 'measured') throw new Error(finding.kind);
    expect(finding.u).toBeGreaterThan(0);
    expect(finding.readings).toContain('run-1');
    expect(finding.readings).toContain('v4.grossWeight');
    expect(finding.remarks.join(' ')).toMatch(/5th to 95th percentile/);
  });

  it('say what is missing instead of inventing it', () => {
    const without = found(
      train({ vehicle: [1, 2, 3, 4].map((position) => vehicle(position)), readings: [] }),
      pulling,
    ).findings;
    const finding = one(without, 'couplerForceAhead');
    expect(finding.kind).toBe('notMeasured');
    if (finding.kind === 'notMeasured')
      expect(finding.missing.join('; ')).toMatch(/continuous tractive effort.*grade at the POD/);
  });
});

describe('simulated forces', () => {
  it('agree with the steady ones while the handling does not change', () => {
    const { context, findings } = found(train(), pulling);
    const simulated = simulatedForces(context, pulling);
    if (simulated.kind !== 'simulated') throw new Error(simulated.missing.join('; '));
    const steady = value(findings, 'couplerForceAhead');
    expect(simulated.aheadAtPod!.value / steady).toBeGreaterThan(0.8);
    expect(simulated.aheadAtPod!.value / steady).toBeLessThan(1.25);
    expect(simulated.aheadAtPod!.low).toBeLessThan(simulated.aheadAtPod!.high);
    expect(simulated.unclosed).toBeLessThan(1e-3);
    for (const finding of simulatedFindings(simulated)) expect(finding.kind).toBe('measured');
  });

  it('are those of the POD itself, not of what the vented brake pipe does after it', () => {
    // No whole number of half seconds from the start of the run.
    const between: RunSamples = { ...pulling, time: seconds.map((t) => 0.93 * t) };
    const simulated = simulatedForces(found(train(), between).context, between);
    if (simulated.kind !== 'simulated') throw new Error(simulated.missing.join('; '));
    const { timesS, behind, behindAtPod } = simulated;
    const at = timesS.findIndex((time) => Math.abs(time) < 1e-6);
    expect(behindAtPod!.value).toBe(behind!.nominal[at]);
    expect(Math.abs(behind!.nominal[at + 1]! - behindAtPod!.value)).toBeGreaterThan(0.5);
  });

  it('are not made up without a run', () => {
    const context = buildContext(train(), { seed: 1 });
    expect(simulatedForces(context, {}).kind).toBe('notSimulated');
  });
});

describe('curving loads and screens', () => {
  it('press both rails towards the field at the leading axle, and balance the weight', () => {
    const { findings } = found(train(), pulling);
    const wheel = (what: string, slot: string): number => {
      const exact = findings.find((each) => each.what === what && each.title.includes(slot));
      if (exact?.kind !== 'measured') throw new Error(`${what} ${slot}`);
      return exact.value;
    };
    expect(wheel('curvingLateral', 'leading outer')).toBeGreaterThan(0);
    expect(wheel('curvingLateral', 'leading inner')).toBeGreaterThan(0);
    const sum = ['leading outer', 'leading inner', 'trailing outer', 'trailing inner'].reduce(
      (total, slot) => total + wheel('curvingVertical', slot),
      0,
    );
    expect(sum).toBeCloseTo((28_000 * 9.80665) / 2 / 1000, 0);
    expect(new Set(findings.map(({ id }) => id)).size).toBe(findings.length);
  });

  it('raise L/V with friction', () => {
    const rubbing = (entered: number) =>
      value(
        found(
          train({
            rail: [
              {
                id: 'low',
                fields: { rail: 'left', where: 'POD', section: '115RE', disturbance: 'undisturbed' },
                readings: [{ quantity: 'topOfRailFriction', value: entered }],
              },
            ],
          }),
          pulling,
        ).findings,
        'curvingWheelRatio',
      );
    expect(rubbing(0.55)).toBeGreaterThan(1.4 * rubbing(0.25));
  });

  it('screen overspeed, harmonic roll and heat', () => {
    const { findings } = found(train(), pulling);
    expect(value(findings, 'overturningShare')).toBeLessThan(0.5);
    expect(value(findings, 'overturningSpeed')).toBeGreaterThan(20);
    expect(value(findings, 'harmonicRollSpeed')).toBeGreaterThan(0.5);
    // 2·207 kN/mm²·7267 mm²·11.5e-6·15 K, 115 lb/yd of steel.
    expect(value(findings, 'railCompression')).toBeCloseTo(519, -1);
    expect(value(findings, 'buckleCurvePush')).toBeGreaterThan(0);
  });
});
