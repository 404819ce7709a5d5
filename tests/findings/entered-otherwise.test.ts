import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CaseRecord } from '~/lib/case/record';
import { findings } from '~/lib/findings';
import type { Finding } from '~/lib/findings/finding';
import {
  apart,
  chalkedAnew,
  countedFrom,
  enteredIn,
  inAnotherOrder,
  inTwoGoes,
  onlyStations,
  ranTheOtherWay,
  shownIn,
  writtenFacingBack,
} from './entered-otherwise';
import { randomRecord } from './random-record';
import { tracedRecord } from '../report/traced-record';
import { wholeCase, type WholeCase } from './whole-case';

const SEED = 20260302;
const TIMEOUT_MS = 60_000;

type Found = ReadonlyMap<string, Finding>;
type Case = WholeCase & { readonly found: Found };

const found = ({ record, options }: WholeCase): Found =>
  new Map(findings(record, options).map((finding) => [finding.id, finding]));

const sampled = (cases: fc.Arbitrary<WholeCase>, numRuns: number): readonly Case[] =>
  fc.sample(cases, { seed: SEED, numRuns }).map((each) => ({ ...each, found: found(each) }));

/** Cases with nearly everything read: train and recorder, turnout, wheels, rails and sheet. */
const WHOLE = sampled(wholeCase, 3);

/** Cases half filled in, in every way the forms allow, but read facing the direction of travel. */
const HALF_FILLED = sampled(
  randomRecord.map((record) => ({
    record: apart({
      ...record,
      readings: record.readings.filter(({ quantity }) => quantity !== 'sheetFacing'),
    }),
    options: { seed: 7 },
  })),
  10,
);

/** Parts of the last digit a double keeps after a sum in another order, or after a reading was converted. */
const CLOSE = { sum: 1e-9, conversion: 1e-6 } as const;

const close = (a: unknown, b: unknown, share: number): boolean => {
  if (typeof a === 'number' && typeof b === 'number')
    return Object.is(a, b) || Math.abs(a - b) <= share * Math.max(1e-3, Math.abs(a), Math.abs(b));
  if (Array.isArray(a) && Array.isArray(b))
    return a.length === b.length && a.every((each, i) => close(each, b[i], share));
  if (a !== null && b !== null && typeof a === 'object' && typeof b === 'object') {
    const [left, right] = [a as Record<string, unknown>, b as Record<string, unknown>];
    return [...new Set([...Object.keys(left), ...Object.keys(right)])].every((key) =>
      close(left[key], right[key], share),
    );
  }
  return a === b;
};

/** Everything a finding says; its readings as a set, its method by name. */
const said = (finding: Finding): Record<string, unknown> => ({
  ...finding,
  method: finding.method.id,
  readings: 'readings' in finding ? [...finding.readings].sort() : [],
});

type Compare = {
  readonly share: number;
  /** What may be worded otherwise: titles and remarks that name a station. */
  readonly leaving?: readonly string[];
};

/** Findings that differ between two cases, with what differs; empty when none does. */
function differences(before: Found, after: Found, { share, leaving = [] }: Compare): readonly string[] {
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((id) => {
    const [a, b] = [before.get(id), after.get(id)];
    if (a === undefined || b === undefined) return [`${id}: ${a === undefined ? 'came' : 'went'}`];
    const [left, right] = [said(a), said(b)];
    return [...new Set([...Object.keys(left), ...Object.keys(right)])]
      .filter((key) => !leaving.includes(key) && !close(left[key], right[key], share))
      .map((key) => `${id} ${key}: ${JSON.stringify(left[key])} became ${JSON.stringify(right[key])}`);
  });
}

const other = (units: unknown): 'us' | 'metric' => (units === 'metric' ? 'us' : 'metric');

/** A long sum after another would keep the runner waiting for a sign of life. */
const breathe = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

async function expectSame(
  cases: readonly Case[],
  change: (record: CaseRecord) => CaseRecord,
  how: Compare,
): Promise<void> {
  for (const { record, options, found: before } of cases) {
    await breathe();
    expect(differences(before, found({ record: change(record), options }), how)).toEqual([]);
  }
}

describe('the cases these properties are about', () => {
  it('measure train, recorder, turnout, wheels, rails, forces and screens', () => {
    const measured = new Set(
      WHOLE.flatMap(({ found: all }) =>
        [...all.values()].filter(({ kind }) => kind === 'measured').map(({ what }) => what),
      ),
    );
    for (const what of [
      'couplerForceAhead',
      'couplerRatioOf',
      'stringline',
      'accelerationAtPod',
      'trainWeight',
      'longShortPairs',
      'pointClearanceTip',
      'pointFirstTouch',
      'guardCheckGauge',
      'backToBackSwing',
      'wheelDiameter',
      'topOfRailFriction',
      'climbLimit',
      'rolloverOtherRail',
      'dropInMargin',
      'curvingWheelRatio',
      'curvingLateral',
      'overturningSpeed',
      'harmonicRollSpeed',
      'buckleCurvePush',
      'unbalance',
      'linePart',
      'warpAtPod',
      'alinement62Worst',
      'gaugeUnderLoad',
    ])
      expect(measured, what).toContain(what);
  });
});

describe('no finding changes', () => {
  it(
    'when the sheet was written facing against the direction of travel, and says so',
    async () => {
      await expectSame(WHOLE, writtenFacingBack, { share: CLOSE.sum });
      await expectSame(HALF_FILLED, writtenFacingBack, { share: CLOSE.sum });
    },
    TIMEOUT_MS,
  );

  it(
    'when the case is shown in the other units',
    async () => {
      const shown = (record: CaseRecord) => shownIn(record, other(record.fields.units));
      await expectSame(WHOLE, shown, { share: 0 });
      await expectSame(HALF_FILLED, shown, { share: 0 });
    },
    TIMEOUT_MS,
  );

  it(
    'when a case with outlines and wear is shown in the other units',
    async () => {
      const options = { seed: 7 };
      const before = found({ record: tracedRecord('us'), options });
      expect(before.has('wearRate:wheelset-1:left.flangeThicknessNa')).toBe(true);
      expect(before.get('flangeClearance')?.kind).toBe('measured');
      expect(differences(before, found({ record: tracedRecord('metric'), options }), { share: 0 })).toEqual(
        [],
      );
    },
    TIMEOUT_MS,
  );

  it(
    'when the same readings are entered in the other units, within the rounding of the conversion',
    () => expectSame(WHOLE, (record) => enteredIn(record, 'metric'), { share: CLOSE.conversion }),
    TIMEOUT_MS,
  );

  it(
    'when the stations are chalked from another number, except in what names them',
    async () => {
      const named = { share: 0, leaving: ['title', 'remarks'] };
      await expectSame(WHOLE, (record) => chalkedAnew(record, (name) => `T${name}`), named);
      await expectSame(HALF_FILLED, (record) => chalkedAnew(record, (name) => `T${name}`), named);
    },
    TIMEOUT_MS,
  );

  it(
    'when everything is entered in another order',
    () => expectSame(WHOLE, (record) => inAnotherOrder(record, SEED), { share: CLOSE.sum }),
    TIMEOUT_MS,
  );

  it(
    'when the sheet is entered in two goes, its end first and gauge and crosslevel last',
    async () => {
      await expectSame(WHOLE, (record) => inTwoGoes(record, 5), { share: CLOSE.sum });
      // Stations without a distance have no order but that of entry in the remark that lists them.
      await expectSame(HALF_FILLED, (record) => inTwoGoes(record, 3), {
        share: CLOSE.sum,
        leaving: ['remarks'],
      });
    },
    TIMEOUT_MS,
  );
});

/** Found of one station by what was read there and, for the averages, within 62 ft of it. */
const OF_STATION = [
  'gauge',
  'gaugeUnderLoad',
  'crosslevel',
  'crosslevelFromUniform',
  'curvature',
  'alinement62',
  'alinement31',
  'profile62Left',
  'profile62Right',
  'runoff31Left',
  'runoff31Right',
  'soundTies',
  'defectiveTies',
  'fasteningsLooseLeft',
  'fasteningsLooseRight',
];

/** Found of the sheet as a whole, wherever the POD lies on it. */
const OF_SHEET = [
  'gaugeWidest',
  'gaugeNarrowest',
  'gaugeUnderLoadWidest',
  'gaugeChangeWorst',
  'gaugeRateWorst',
  'crosslevelLeast',
  'crosslevelGreatest',
  'crosslevelFromUniformWorst',
  'warpWorst',
  'warpShortWorst',
  'warpUnderLoad',
  'alinement62Worst',
  'alinement31Worst',
  'profile62LeftWorst',
  'profile62RightWorst',
  'runoff31LeftWorst',
  'runoff31RightWorst',
  'soundTiesFewest',
  'defectiveTiesMost',
];

const about = (all: Found, whats: readonly string[]): readonly Finding[] =>
  [...all.values()].filter(({ what }) => whats.includes(what));

/** Value, uncertainty and limits alone. */
const numbers = (finding: Finding | undefined): unknown =>
  finding?.kind === 'measured'
    ? {
        value: finding.value,
        u: finding.u,
        limits: finding.limits.map(({ limit, exceeded, probabilityExceeds }) => ({
          limit,
          exceeded,
          probabilityExceeds,
        })),
      }
    : finding?.kind;

describe('distances counted from another place', () => {
  it(
    'change nothing that is found of a station or of the sheet as a whole, and move its breaks along',
    async () => {
      const byM = 37.1856;
      for (const { record, options, found: before } of WHOLE) {
        await breathe();
        const after = found({ record: countedFrom(record, byM), options });
        for (const finding of about(before, [...OF_STATION, ...OF_SHEET, 'warp', 'linePart'])) {
          const moved = numbers(after.get(finding.id));
          expect(close(moved, numbers(finding), 1e-6), `${finding.id}: ${JSON.stringify(moved)}`).toBe(true);
        }
        for (const finding of about(before, ['lineBreak'])) {
          const moved = after.get(finding.id);
          if (finding.kind !== 'measured' || moved?.kind !== 'measured') throw new Error(finding.id);
          expect(moved.value - finding.value).toBeCloseTo(byM, 4);
        }
      }
    },
    TIMEOUT_MS,
  );
});

describe('a train that ran the other way', () => {
  const turned = (id: string): string =>
    id.replace(/Left|Right/, (side) => (side === 'Left' ? 'Right' : 'Left'));

  it(
    'leaves what is found of the track, with left and right rails exchanged',
    async () => {
      for (const { record, options, found: before } of WHOLE) {
        await breathe();
        const after = found({ record: ranTheOtherWay(record), options });
        const level = record.fields.alignment === 'tangent' ? -1 : 1;
        for (const finding of about(before, OF_STATION)) {
          const now = after.get(turned(finding.id));
          if (finding.kind !== 'measured' || now?.kind !== 'measured') {
            expect(now?.kind, finding.id).toBe(finding.kind);
            continue;
          }
          const sign = finding.what.startsWith('crosslevel') ? level : 1;
          expect(now.value, finding.id).toBeCloseTo(sign * finding.value, 6);
          expect(now.u, finding.id).toBeCloseTo(finding.u, 6);
          expect(now.limits.map(({ exceeded }) => exceeded)).toEqual(
            finding.limits.map(({ exceeded }) => exceeded),
          );
        }
        for (const finding of about(before, OF_SHEET)) {
          const now = after.get(turned(finding.id));
          if (finding.kind !== 'measured' || now?.kind !== 'measured') {
            expect(now?.kind, finding.id).toBe(finding.kind);
            continue;
          }
          // Of a change along the track only the size is the same both ways.
          expect(Math.abs(now.value), finding.id).toBeCloseTo(Math.abs(finding.value), 6);
          expect(now.u, finding.id).toBeCloseTo(finding.u, 6);
        }
      }
    },
    TIMEOUT_MS,
  );
});

describe('a part of the sheet', () => {
  const REACH_M = 18.8976;
  it(
    'gives its stations what the whole sheet gives them, 62 ft and more from the cut',
    async () => {
      let compared = 0;
      for (const { record, options, found: before } of WHOLE) {
        await breathe();
        const cut = Math.floor(record.entities.station.length / 2);
        const places = new Map(
          record.readings.flatMap(({ subject, quantity, value }) =>
            quantity === 'stationPosition' && value !== null ? [[subject.id, value] as const] : [],
          ),
        );
        const cutM = places.get(record.entities.station[cut]?.id ?? '') ?? NaN;
        for (const which of [(index: number) => index >= cut, (index: number) => index <= cut]) {
          const after = found({ record: onlyStations(record, which), options });
          for (const finding of about(before, [...OF_STATION, 'warp'])) {
            const at = places.get(finding.subject?.id ?? '') ?? NaN;
            const inPart = which(record.entities.station.findIndex(({ id }) => id === finding.subject?.id));
            if (!inPart || Math.abs(at - cutM) < REACH_M - 0.001) continue;
            compared += 1;
            expect(close(numbers(after.get(finding.id)), numbers(finding), CLOSE.sum), finding.id).toBe(true);
          }
        }
      }
      expect(compared).toBeGreaterThan(100);
    },
    TIMEOUT_MS,
  );
});
