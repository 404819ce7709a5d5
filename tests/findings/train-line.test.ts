import { describe, expect, it } from 'vitest';
import { findingsOf } from '~/lib/findings';
import { buildContext, recorderPart, type Context } from '~/lib/findings/context';
import type { Finding } from '~/lib/findings/finding';
import { RECORDED_SPEED_U, recorderAtPod } from '~/lib/findings/recorder-at-pod';
import { couplerForces } from '~/lib/findings/train/coupler-forces';
import { lineUnderTrain } from '~/lib/findings/train/line-under-train';
import { lineProfile } from '~/lib/findings/train/line-profile';
import { simulatedForces } from '~/lib/findings/train/simulated-forces';
import { trainState, type TrainState } from '~/lib/findings/train/train-state';
import { pulling as samples, run } from './recorded-run';
import { buildRecord, type EntitySpec, type ReadingSpec, type RecordSpec } from './record-builder';

const LENGTH = 18;
const FIRST = 4;

const vehicle = (position: number, extra: readonly ReadingSpec[] = [], type = 'gondola'): EntitySpec => ({
  id: `v${position}`,
  fields: {
    position,
    mark: 'TST',
    number: String(position),
    type: position === 1 ? 'locomotive' : type,
    load: 'loaded',
    firstDerailed: position === FIRST,
  },
  readings: [
    { quantity: 'grossWeight', value: 120_000 },
    { quantity: 'lengthOverPullingFaces', value: LENGTH },
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

type Row = { readonly from: number; readonly to?: number; readonly grade?: number; readonly curve?: number };
const line = (rows: readonly (Row & { readonly hand?: 'left' | 'right' })[]): readonly EntitySpec[] =>
  rows.map(({ from, to, grade, curve, hand }, i) => ({
    id: `line${i}`,
    fields: { hand: hand ?? null },
    readings: [
      { quantity: 'lineFrom', value: from },
      ...(to === undefined ? [] : [{ quantity: 'lineTo', value: to }]),
      ...(grade === undefined ? [] : [{ quantity: 'lineGrade', value: grade }]),
      ...(curve === undefined ? [] : [{ quantity: 'lineCurvature', value: curve }]),
    ],
  }));

function contextOf(spec: RecordSpec): Context {
  const record = buildRecord({
    ...spec,
    fields: { alignment: 'curveLeft', ...spec.fields },
    vehicle: spec.vehicle ?? [vehicle(1, RATING), ...[2, 3, 4, 5, 6, 7].map((position) => vehicle(position))],
    recorderRuns: [run],
  });
  const at = recorderAtPod(record, run, samples, RECORDED_SPEED_U);
  return buildContext(record, { seed: 1, recorder: recorderPart(at) });
}

function stateOf(spec: RecordSpec): TrainState {
  const state = trainState(contextOf(spec));
  if (state.kind === 'unknown') throw new Error(state.missing.join('; '));
  return state;
}

const measuredOf = (context: Context, what: string): Extract<Finding, { kind: 'measured' }> => {
  const found = findingsOf(context).find((each) => each.what === what);
  if (found?.kind !== 'measured') throw new Error(`${what} is ${found?.kind ?? 'not there'}`);
  return found;
};

describe('the line under a train', () => {
  it('gives every vehicle the grade and the curve at its middle, by the lengths ahead of it', () => {
    const { vehicles, readings, remarks } = stateOf({
      lineStretch: line([
        { from: -500, to: -60, grade: -0.01 },
        { from: 60, to: 500, grade: 0.01 },
        { from: -500, to: 500, curve: 0.002, hand: 'left' },
      ]),
    });
    // Middle of vehicle i from the POD: three lengths ahead of the first derailed one's front, less half.
    vehicles.forEach(({ atPodM, grade, curvature, gradeOnLine }, i) => {
      expect(atPodM).toBeCloseTo((3 - i - 0.5) * LENGTH, 9);
      const expected = atPodM <= -60 ? -0.01 : atPodM >= 60 ? 0.01 : (atPodM / 60) * 0.01;
      expect(grade.value).toBeCloseTo(expected, 9);
      expect(curvature).toEqual([0.002, 0.002]);
      expect(gradeOnLine).toBe(true);
    });
    expect(readings).toContain('line0.lineGrade');
    expect(readings).toContain('line2.lineCurvature');
    expect(remarks.join(' ')).toContain('Grade from the profile of the line for the whole train.');
  });

  it('lets what was entered for a vehicle go before it, and the grade at the POD stand beyond its ends', () => {
    const { vehicles, remarks } = stateOf({
      readings: [{ quantity: 'gradeAtPod', value: 0.003 }],
      lineStretch: line([{ from: -30, to: 500, grade: 0.01 }]),
      vehicle: [
        vehicle(1, [...RATING, { quantity: 'gradeUnderVehicle', value: 0.02 }]),
        ...[2, 3, 4, 5, 6, 7].map((position) => vehicle(position)),
      ],
    });
    expect(vehicles.map(({ grade }) => grade.value)).toEqual(
      [0.02, 0.01, 0.01, 0.01, 0.01, 0.01, 0.01].map((g, i) => (i > 4 ? 0.003 : g)),
    );
    expect(remarks.join(' ')).toContain('for 4 of 7 vehicles; as entered for the vehicle for 1.');
    expect(remarks.join(' ')).toContain('where the profile of the line does not reach');
  });

  it('says what is missing when the profile does not reach and nothing else stands in', () => {
    const state = trainState(contextOf({ lineStretch: line([{ from: -30, to: 500, grade: 0.01 }]) }));
    if (state.kind !== 'unknown') throw new Error('it is known');
    expect(state.missing.join(' ')).toMatch(/under 2 of 7 vehicles/);
  });

  it('reads a curve of the other hand as negative, and the hand not said as that of the POD', () => {
    const at = (alignment: string, hand: 'left' | 'right' | undefined): number =>
      stateOf({
        fields: { alignment },
        readings: [{ quantity: 'gradeAtPod', value: 0 }],
        lineStretch: line([{ from: -500, to: 500, curve: 0.002, ...(hand === undefined ? {} : { hand }) }]),
      }).vehicles[0]!.curvature[0];
    expect(at('curveLeft', 'left')).toBe(0.002);
    expect(at('curveLeft', 'right')).toBe(-0.002);
    expect(at('curveRight', 'right')).toBe(0.002);
    expect(at('curveRight', undefined)).toBe(0.002);
  });

  it('comes to the same when it was read facing against the direction of travel', () => {
    const rows = [
      { from: -500, to: -60, grade: -0.01 },
      { from: 60, to: 500, grade: 0.01 },
      { from: -500, to: 20, curve: 0.002, hand: 'left' },
      { from: 40, to: 500, curve: 0.001, hand: 'right' },
    ] as const;
    const back = rows.map((row) => ({
      ...row,
      from: -row.from,
      to: -row.to,
      ...('grade' in row ? { grade: -row.grade } : {}),
      ...('hand' in row ? { hand: row.hand === 'left' ? ('right' as const) : ('left' as const) } : {}),
    }));
    const travel = stateOf({ lineStretch: line(rows) });
    const against = stateOf({
      fields: { alignment: 'curveRight' },
      readings: [{ quantity: 'sheetFacing', state: 'against' }],
      lineStretch: line(back),
    });
    travel.vehicles.forEach(({ grade, curvature }, i) => {
      expect(against.vehicles[i]!.grade.value).toBeCloseTo(grade.value, 12);
      expect(against.vehicles[i]!.curvature[0]).toBeCloseTo(curvature[0], 12);
    });
  });
});

describe('a train lying over a reverse curve', () => {
  const reverse = line([
    { from: -500, to: 500, grade: 0.002 },
    { from: -500, to: -20, curve: 0.004, hand: 'right' },
    { from: 20, to: 500, curve: 0.004, hand: 'left' },
  ]);
  const one = line([
    { from: -500, to: 500, grade: 0.002 },
    { from: -500, to: 500, curve: 0.004, hand: 'left' },
  ]);
  const forcesOf = (lineStretch: readonly EntitySpec[]) => {
    const forces = couplerForces(contextOf({ lineStretch }));
    if (forces.kind === 'unknown') throw new Error(forces.missing.join('; '));
    return forces;
  };

  it('is pulled to the inside of each curve, and less where it passes from one to the other', () => {
    const [over, round] = [forcesOf(reverse), forcesOf(one)];
    const mean = (forces: typeof over, i: number): number =>
      (forces.trucks[i]![0].mean + forces.trucks[i]![1].mean) / 2;
    // Well within either curve each vehicle is drawn to the inside of its own.
    for (const i of [1, 5]) {
      expect(mean(over, i)).toBeGreaterThan(0);
      expect(mean(over, i) / mean(round, i)).toBeGreaterThan(0.75);
    }
    // Astride the middle the pulls at both ends go opposite ways: little net force, each truck its own way.
    const [lead, trail] = over.trucks[FIRST - 2]!;
    expect(Math.abs(lead.mean + trail.mean)).toBeLessThan(0.6 * 2 * mean(round, FIRST - 2));
  });

  it('has resistance of the curve whatever its hand', () => {
    forcesOf(reverse).couplers.forEach(({ mean }, i) => {
      expect(Math.abs(mean - forcesOf(one).couplers[i]!.mean)).toBeLessThan(2);
    });
  });
});

describe('locomotives worked apart', () => {
  const train = (remote: readonly ReadingSpec[]): readonly EntitySpec[] => [
    vehicle(1, RATING),
    ...[2, 3, 4, 5, 6].map((position) => vehicle(position)),
    vehicle(7, [...RATING, ...remote], 'locomotive'),
  ];
  const gradeAtPod: RecordSpec['readings'] = [{ quantity: 'gradeAtPod', value: 0.002 }];
  const behindFirst = (remote: readonly ReadingSpec[]): number =>
    measuredOf(contextOf({ readings: gradeAtPod, vehicle: train(remote) }), 'couplerForceBehind').value;

  it('push from the rear in the notch of the recording one, in their own, or not at all', () => {
    const asRecorded = behindFirst([]);
    const isolated = behindFirst([{ quantity: 'locomotiveControl', state: 'isolated' }]);
    const own = (notch: number): number =>
      behindFirst([
        { quantity: 'locomotiveControl', state: 'byItself' },
        { quantity: 'ownThrottle', value: notch },
      ]);
    // A pusher takes from the draft behind the first derailed vehicle, the more the higher its notch.
    expect(asRecorded).toBeLessThan(isolated - 50);
    expect(own(6)).toBeCloseTo(asRecorded, 6);
    expect(own(8)).toBeLessThan(own(3));
    expect(own(3)).toBeLessThan(own(0));
    expect(own(0)).toBeCloseTo(isolated, 6);
    const braking = behindFirst([
      { quantity: 'locomotiveControl', state: 'byItself' },
      { quantity: 'ownDynamicBrake', value: 8 },
    ]);
    expect(braking).toBeGreaterThan(isolated + 50);
  });

  it('ask for their notch when worked by themselves, and for no rating when isolated', () => {
    const unsaid = trainState(
      contextOf({
        readings: gradeAtPod,
        vehicle: train([{ quantity: 'locomotiveControl', state: 'byItself' }]),
      }),
    );
    if (unsaid.kind !== 'unknown') throw new Error('it is known');
    expect(unsaid.missing.join(' ')).toContain('notch at the POD of 1 locomotive worked by itself');
    const idle = trainState(
      contextOf({
        readings: gradeAtPod,
        vehicle: [
          vehicle(1, RATING),
          ...[2, 3, 4, 5].map((position) => vehicle(position)),
          vehicle(6, [{ quantity: 'locomotiveControl', state: 'isolated' }], 'locomotive'),
        ],
      }),
    );
    expect(idle.kind).toBe('known');
  });

  it('hold the simulated train together as the steady one', () => {
    const context = contextOf({ readings: gradeAtPod, vehicle: train([]) });
    const outcome = simulatedForces(context, samples);
    if (outcome.kind === 'notSimulated') throw new Error(outcome.missing.join('; '));
    const steady = measuredOf(context, 'couplerForceBehind');
    // Of some hundred kN that the pusher changes there.
    expect(Math.abs(outcome.behindAtPod!.value - steady.value)).toBeLessThan(10);
    expect(outcome.remarks.join(' ')).toContain('vented at 2 places');
  });
});

describe('lineUnderTrain', () => {
  it('runs over the profile before and beyond the train, keeping its steps', () => {
    const context = contextOf({
      lineStretch: line([
        { from: -2000, to: -1000, grade: -0.012 },
        { from: -1000, to: 900, grade: 0.004 },
        { from: -2000, to: 900, curve: 0.001, hand: 'left' },
      ]),
    });
    const state = trainState(context);
    if (state.kind === 'unknown') throw new Error(state.missing.join('; '));
    const points = lineUnderTrain(state.vehicles, lineProfile(context));
    expect(points[0]).toEqual({ m: -2000, grade: -0.012, curvaturePerM: 0.001 });
    expect(points.filter(({ m }) => m === -1000).map(({ grade }) => grade)).toEqual([-0.012, 0.004]);
    expect(points.at(-1)).toEqual({ m: 900, grade: 0.004, curvaturePerM: 0.001 });
    const places = points.map(({ m }) => m);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });
});
