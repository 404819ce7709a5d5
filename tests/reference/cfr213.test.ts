import { describe, expect, it } from 'vitest';
import { conditionsFor, limitsFor } from '../../lib/rules/apply';
import type { RuleQuantityId } from '../../lib/rules/rule-quantity';
import type { Place } from '../../lib/rules/rule-set';
import { us49cfr213 } from '../../lib/rules/sets/us-49cfr213';

const MM_PER_INCH = 25.4;
const TANGENT: Place = { onCurve: false };
const CURVE: Place = { onCurve: true, curveDegrees: 6 };
/** Operations at a qualified cant deficiency of 6 in. */
const HIGH: Place = { ...CURVE, qualifiedUnbalanceMm: 6 * MM_PER_INCH };
const CLASSES = ['1', '2', '3', '4', '5'] as const;

type Row = {
  readonly section: string;
  /** Where the text of the section was read when the numbers below were taken from it. */
  readonly readAt: string;
  readonly quantity: RuleQuantityId;
  readonly place: Place;
  readonly sense: 'max' | 'min';
  /** Paragraph alone, where two of them limit the same thing at the same place. */
  readonly citation?: string;
  /** Inches, classes 1 to 5, written here as decimals, apart from the printed text in the data. */
  readonly inches: readonly (number | null)[];
};

const ALINEMENT = 'casetext.com, 49 CFR 213.55, current through 31 March 2024';
const SURFACE = 'law.cornell.edu (1998 text) and federal.elaws.us (78 FR 16101), 49 CFR 213.63';
const GUARD = 'law.lawstack.com, 49 CFR 213.143, with 85 FR 63388 (2020)';
const FROG = 'law.lawstack.com, 49 CFR 213.137, with 85 FR 63388 (2020)';
const GAUGE = 'law.lawstack.com, 49 CFR 213.53, 18 November 2020';
const REPRINT = 'a public reprint of part 213 with the amendments of 2020';
const MISMATCH = 'a Markdown copy of the eCFR, 49 CFR 213.115';

const ROWS: readonly Row[] = [
  {
    section: '213.53(b) least',
    readAt: GAUGE,
    quantity: 'gauge',
    place: TANGENT,
    sense: 'min',
    inches: [56, 56, 56, 56, 56],
  },
  {
    section: '213.53(b) most',
    readAt: GAUGE,
    quantity: 'gauge',
    place: TANGENT,
    sense: 'max',
    inches: [58, 57.75, 57.75, 57.5, 57.5],
  },
  {
    section: '213.55(a) tangent, 62-ft line',
    readAt: ALINEMENT,
    quantity: 'alinement62',
    place: TANGENT,
    sense: 'max',
    inches: [5, 3, 1.75, 1.5, 0.75],
  },
  {
    section: '213.55(a) curve, 62-ft chord',
    readAt: ALINEMENT,
    quantity: 'alinement62',
    place: CURVE,
    sense: 'max',
    inches: [5, 3, 1.75, 1.5, 0.625],
  },
  {
    section: '213.55(a) curve, 31-ft chord',
    readAt: ALINEMENT,
    quantity: 'alinement31',
    place: CURVE,
    sense: 'max',
    inches: [null, null, 1.25, 1, 0.5],
  },
  {
    section: '213.63(a) runoff',
    readAt: SURFACE,
    quantity: 'runoff31',
    place: TANGENT,
    sense: 'max',
    inches: [3.5, 3, 2, 1.5, 1],
  },
  {
    section: '213.63(a) profile',
    readAt: SURFACE,
    quantity: 'profile62',
    place: CURVE,
    sense: 'max',
    inches: [3, 2.75, 2.25, 2, 1.25],
  },
  {
    section: '213.63(a) crosslevel on tangent',
    readAt: SURFACE,
    quantity: 'crosslevelTangent',
    place: TANGENT,
    sense: 'max',
    inches: [3, 2, 1.75, 1.25, 1],
  },
  {
    section: '213.63(a) reverse elevation on curves',
    readAt: SURFACE,
    quantity: 'crosslevelReverseOnCurve',
    place: CURVE,
    sense: 'max',
    inches: [3, 2, 1.75, 1.25, 1],
  },
  {
    section: '213.63(a) crosslevel difference',
    readAt: SURFACE,
    quantity: 'crosslevelDifference62',
    place: CURVE,
    sense: 'max',
    inches: [3, 2.25, 2, 1.75, 1.5],
  },
  {
    section: '213.63(a) footnote 1',
    readAt: SURFACE,
    quantity: 'crosslevelDifferenceHigh62',
    place: CURVE,
    sense: 'max',
    inches: [1.5, 1.5, 1.5, 1.5, 1.5],
  },
  {
    section: '213.63(a) footnote 2',
    readAt: SURFACE,
    quantity: 'staggeredJoints',
    place: TANGENT,
    sense: 'max',
    inches: [null, 1.25, 1.25, 1.25, 1.25],
  },
  {
    section: '213.63(a) footnote *',
    readAt: SURFACE,
    quantity: 'spiralVariation31',
    place: CURVE,
    sense: 'max',
    inches: [2, 1.75, 1.25, 1, 0.75],
  },
  {
    section: '213.55(b) curve, 62-ft chord',
    readAt: ALINEMENT,
    quantity: 'alinement62',
    place: HIGH,
    sense: 'max',
    citation: '49 CFR 213.55(b)',
    inches: [1.25, 1.25, 1.25, 0.875, 0.625],
  },
  {
    section: '213.55(b) curve, 31-ft chord',
    readAt: ALINEMENT,
    quantity: 'alinement31',
    place: HIGH,
    sense: 'max',
    citation: '49 CFR 213.55(b)',
    inches: [null, null, 0.75, 0.75, 0.5],
  },
  {
    section: '213.63(b) profile, 62-ft chord',
    readAt: SURFACE,
    quantity: 'profile62',
    place: HIGH,
    sense: 'max',
    citation: '49 CFR 213.63(b)',
    inches: [2.25, 2.25, 1.75, 1.25, 1],
  },
  {
    section: '213.63(b) profile, 31-ft chord',
    readAt: SURFACE,
    quantity: 'profile31',
    place: HIGH,
    sense: 'max',
    inches: [null, null, 1, 1, 1],
  },
  {
    section: '213.63(b) short warp',
    readAt: SURFACE,
    quantity: 'crosslevelDifference10',
    place: HIGH,
    sense: 'max',
    inches: [2, 2, 1.75, 1.75, 1.5],
  },
  {
    section: '213.139(e)',
    readAt: 'laws9.com, 49 CFR 213.139',
    quantity: 'springFrogHorn',
    place: TANGENT,
    sense: 'max',
    inches: [0.25, 0.25, 0.25, 0.25, 0.25],
  },
  {
    section: '213.141(a)',
    readAt: REPRINT,
    quantity: 'raisedGuardWear',
    place: TANGENT,
    sense: 'max',
    inches: [0.375, 0.375, 0.375, 0.375, 0.375],
  },
  {
    section: '213.57(a)',
    readAt: 'docslib.org, 49 CFR Ch. II (10-1-13 edition), 213.57',
    quantity: 'elevationMax',
    place: CURVE,
    sense: 'max',
    inches: [8, 8, 7, 7, 7],
  },
  {
    section: '213.115 tread',
    readAt: MISMATCH,
    quantity: 'railEndMismatchTread',
    place: TANGENT,
    sense: 'max',
    inches: [0.25, 0.25, 0.1875, 0.125, 0.125],
  },
  {
    section: '213.115 gauge side',
    readAt: MISMATCH,
    quantity: 'railEndMismatchGauge',
    place: TANGENT,
    sense: 'max',
    inches: [0.25, 0.1875, 0.1875, 0.125, 0.125],
  },
  {
    section: '213.133(c)',
    readAt: REPRINT,
    quantity: 'flangewayWidth',
    place: TANGENT,
    sense: 'min',
    inches: [1.5, 1.5, 1.5, 1.5, 1.5],
  },
  {
    section: '213.137(a)',
    readAt: FROG,
    quantity: 'flangewayDepth',
    place: TANGENT,
    sense: 'min',
    inches: [1.375, 1.5, 1.5, 1.5, 1.5],
  },
  {
    section: '213.137(b)',
    readAt: FROG,
    quantity: 'frogPointDown',
    place: TANGENT,
    sense: 'max',
    inches: [0.625, 0.625, 0.625, 0.625, 0.625],
  },
  {
    section: '213.137(c)',
    readAt: FROG,
    quantity: 'frogTreadWear',
    place: TANGENT,
    sense: 'max',
    inches: [0.375, 0.375, 0.375, 0.375, 0.375],
  },
  {
    section: '213.143(a) guard check',
    readAt: GUARD,
    quantity: 'guardCheckGauge',
    place: TANGENT,
    sense: 'min',
    inches: [54.125, 54.25, 54.375, 54.375, 54.5],
  },
  {
    section: '213.143(a) guard face',
    readAt: GUARD,
    quantity: 'guardFaceGauge',
    place: TANGENT,
    sense: 'max',
    inches: [53.25, 53.125, 53.125, 53.125, 53],
  },
];

describe('49 CFR part 213, limits against the printed rule', () => {
  for (const row of ROWS) {
    it(`${row.section} (read at ${row.readAt})`, () => {
      const inches = CLASSES.map((id) => {
        const found = limitsFor(us49cfr213, id, row.quantity, row.place).filter(
          (l) => l.limit.sense === row.sense && (row.citation ?? l.limit.citation) === l.limit.citation,
        );
        expect(found.length).toBeLessThanOrEqual(1);
        return found[0] === undefined ? null : found[0].value / MM_PER_INCH;
      });
      inches.forEach((value, i) => {
        const expected = row.inches[i];
        if (expected === null || expected === undefined) expect(value).toBeNull();
        else expect(value).toBeCloseTo(expected, 9);
      });
    });
  }

  it('every length limit of the set is in the table above', () => {
    const tabled = new Set([
      ...ROWS.map((row) => row.quantity),
      'gaugeUnderLoad',
      'tiesPer39ft',
      'placardedCars',
    ]);
    expect(us49cfr213.limits.map((l) => l.quantity).filter((q) => !tabled.has(q))).toEqual([]);
  });

  it('213.9(a) speeds, mph, freight and passenger (read at railroad.net and casemine.com reprints)', () => {
    const mph = (ms: number | null | undefined) => (ms == null ? null : ms / 0.44704);
    const table: readonly [string, number, number | null][] = [
      ['excepted', 10, null],
      ['1', 10, 15],
      ['2', 25, 30],
      ['3', 40, 60],
      ['4', 60, 80],
      ['5', 80, 90],
    ];
    for (const [id, freight, passenger] of table) {
      const found = us49cfr213.classes.find((each) => each.id === id);
      expect(mph(found?.freightSpeedMs)).toBeCloseTo(freight, 9);
      if (passenger === null) expect(found?.passengerSpeedMs).toBeNull();
      else expect(mph(found?.passengerSpeedMs)).toBeCloseTo(passenger, 9);
    }
  });

  it('213.109(b)(4) crossties in 39 ft (read at govregs.com, 49 CFR 213.109)', () => {
    const ties = (place: Place) =>
      CLASSES.map((id) => limitsFor(us49cfr213, id, 'tiesPer39ft', place)[0]?.value);
    expect(ties(TANGENT)).toEqual([5, 8, 8, 12, 12]);
    expect(ties({ onCurve: true, curveDegrees: 2 })).toEqual([5, 8, 8, 12, 12]);
    expect(ties(CURVE)).toEqual([6, 9, 10, 14, 14]);
    expect(ties({ onCurve: false, inTurnout: true })).toEqual([6, 9, 10, 14, 14]);
  });

  it('213.143(b) heavy-point frog so equipped, class 5 (read at law.lawstack.com)', () => {
    const least = (answer: string | null) =>
      limitsFor(us49cfr213, '5', 'guardCheckGauge', TANGENT, () => answer).map(({ value }) => value / 25.4);
    expect(least('equipped')).toEqual([54.375]);
    expect(least('notEquipped')).toEqual([54.5]);
    expect(least(null)).toEqual([54.5]);
  });

  it('213.109(e) ties at joints: the answers that do not meet it, by class (read in a public reprint)', () => {
    const notMet = (id: string) =>
      conditionsFor(us49cfr213, id, () => null).find(({ quantity }) => quantity === 'jointTies')?.notMet;
    expect(CLASSES.map(notMet)).toEqual([
      ['none'],
      ['none'],
      ['none', 'oneWithin24'],
      ['none', 'oneWithin24'],
      ['none', 'oneWithin24'],
    ]);
  });

  it('213.4(a) to (e): what excepted track is held to (read at law.lawstack.com)', () => {
    const sections = conditionsFor(us49cfr213, 'excepted', () => null).map(({ citation }) => citation);
    expect(sections).toEqual(
      ['(a)', '(b)', '(c)', '(d)', '(e)(2)'].map((paragraph) => `49 CFR 213.4${paragraph}`),
    );
    expect(limitsFor(us49cfr213, 'excepted', 'placardedCars', TANGENT).map(({ value }) => value)).toEqual([
      5,
    ]);
  });

  it('213.135 and 213.139: every paragraph about the state of a switch or spring frog is asked about', () => {
    const asked = new Set((us49cfr213.conditions ?? []).map(({ citation }) => citation));
    for (const paragraph of 'abcdefgh') expect(asked).toContain(`49 CFR 213.135(${paragraph})`);
    for (const paragraph of 'abcd') expect(asked).toContain(`49 CFR 213.139(${paragraph})`);
  });

  it('213.4(e)(4), 213.53(b) excepted track: gauge most 58 1/4 in, no least (read at law.lawstack.com)', () => {
    const gauge = limitsFor(us49cfr213, 'excepted', 'gauge', TANGENT);
    expect(gauge.map((l) => [l.limit.sense, l.value / MM_PER_INCH])).toEqual([['max', 58.25]]);
    expect(limitsFor(us49cfr213, 'excepted', 'profile62', TANGENT)).toEqual([]);
  });

  it('213.57(b), (c) speed on curves: 0.0007, 3 in for every vehicle, 10 points over 155 ft (read at docslib.org)', () => {
    const speed = us49cfr213.curvingSpeed;
    expect(speed?.coefficient).toBe(0.0007);
    expect((speed?.qualifiedUnbalanceMm ?? 0) / MM_PER_INCH).toBeCloseTo(3, 9);
    expect((speed?.averagedOverM ?? 0) / 0.3048).toBeCloseTo(155, 9);
    expect(speed?.averagedPoints).toBe(10);
  });

  it('213.63(a) "less than 62 feet apart" leaves out a pair exactly 62 ft apart; footnote 1 "within 62 feet" does not', () => {
    const base = (quantity: RuleQuantityId) => limitsFor(us49cfr213, '2', quantity, CURVE)[0]?.limit.base;
    expect(base('crosslevelDifference62')?.includesExact).toBe(false);
    expect(base('crosslevelDifferenceHigh62')?.includesExact).toBe(true);
    expect((base('crosslevelDifference62')?.lengthM ?? 0) / 0.3048).toBeCloseTo(62, 9);
  });

  it('213.327(a) nine-station mean is recorded as adopted for classes 1 to 5 (read at chanrobles.com)', () => {
    const convention = us49cfr213.conventions.find((each) => each.id === 'nine-station-uniform');
    expect(convention?.text).toContain('nine');
    expect(convention?.text).toContain('adopted');
  });
});
