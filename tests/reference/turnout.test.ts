import { describe, expect, it } from 'vitest';
import { leastMissMm, simpleFlangeAtRail } from '~/lib/mechanics/point-clearance';
import { buildContext } from '~/lib/findings/context';
import { turnoutReadingFindings } from '~/lib/findings/turnout/turnout-readings';
import { clearances, pointFit } from '~/lib/turnout/point-fit';
import { tracedPoint } from '~/lib/turnout/point-trace';
import { falseFlangeBelowStockRail } from '~/lib/turnout/false-flange';
import { listed } from '../findings/by-id';
import { buildRecord, type ReadingSpec } from '../findings/record-builder';
import { asTrace, lineThrough } from '../turnout/points';
import numbers from './point-fit.json';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const CLASSES = ['1', '2', '3', '4', '5'] as const;

/** A reading of a turnout on track of a class, held against the rule as the screens and the report show it. */
function limitOf(trackClass: string, quantity: string, entered: string, more: readonly ReadingSpec[] = []) {
  const record = buildRecord({
    fields: { trackClass, alignment: 'tangent' },
    turnout: [
      {
        id: 'x1',
        fields: { name: 'East', movement: 'facing', disturbance: 'undisturbed' },
        readings: [{ quantity, entered }, ...more],
      },
    ],
  });
  const { limits } = listed(turnoutReadingFindings(buildContext(record, { seed: 1 }))).measured(
    `${quantity}:x1`,
  );
  return limits.map(({ citation, exceeded }) => ({ citation, exceeded }));
}

type Row = {
  readonly quantity: string;
  readonly citation: string;
  /** As the rule prints it, class 1 to 5, and the next sixteenth of an inch beyond. */
  readonly allowed: readonly string[];
  readonly beyond: readonly string[];
};

/** Text of the sections as read in public reprints of 49 CFR part 213 with the amendments of 85 FR 63388 (2020). */
const ROWS: readonly Row[] = [
  {
    quantity: 'guardCheckGauge',
    citation: '49 CFR 213.143(a)',
    allowed: [`4' 6 1/8"`, `4' 6 1/4"`, `4' 6 3/8"`, `4' 6 3/8"`, `4' 6 1/2"`],
    beyond: [`4' 6 1/16"`, `4' 6 3/16"`, `4' 6 5/16"`, `4' 6 5/16"`, `4' 6 7/16"`],
  },
  {
    quantity: 'guardFaceGauge',
    citation: '49 CFR 213.143(a)',
    allowed: [`4' 5 1/4"`, `4' 5 1/8"`, `4' 5 1/8"`, `4' 5 1/8"`, `4' 5"`],
    beyond: [`4' 5 5/16"`, `4' 5 3/16"`, `4' 5 3/16"`, `4' 5 3/16"`, `4' 5 1/16"`],
  },
  {
    quantity: 'flangewayDepth',
    citation: '49 CFR 213.137(a)',
    allowed: ['1 3/8', '1 1/2', '1 1/2', '1 1/2', '1 1/2'],
    beyond: ['1 5/16', '1 7/16', '1 7/16', '1 7/16', '1 7/16'],
  },
  {
    quantity: 'flangewayWidth',
    citation: '49 CFR 213.133(c)',
    allowed: ['1 1/2', '1 1/2', '1 1/2', '1 1/2', '1 1/2'],
    beyond: ['1 7/16', '1 7/16', '1 7/16', '1 7/16', '1 7/16'],
  },
  {
    quantity: 'frogTreadWear',
    citation: '49 CFR 213.137(c)',
    allowed: ['3/8', '3/8', '3/8', '3/8', '3/8'],
    beyond: ['7/16', '7/16', '7/16', '7/16', '7/16'],
  },
];

describe('frog and guard readings, class by class, against the printed rule', () => {
  for (const { quantity, citation, allowed, beyond } of ROWS) {
    it(`${citation}: ${quantity}`, () => {
      for (const [i, id] of CLASSES.entries()) {
        expect([id, limitOf(id, quantity, allowed[i]!)]).toEqual([id, [{ citation, exceeded: false }]]);
        expect([id, limitOf(id, quantity, beyond[i]!)]).toEqual([id, [{ citation, exceeded: true }]]);
      }
    });
  }

  it('49 CFR 213.137(b): a point more than 5/8 in down and 6 in back, every class', () => {
    for (const id of CLASSES) {
      const of = (down: string, back: string) =>
        limitOf(id, 'frogPointDown', down, [{ quantity: 'frogPointBack', entered: back }]);
      expect(of('5/8', '6')).toEqual([{ citation: '49 CFR 213.137(b)', exceeded: false }]);
      expect(of('11/16', '6')).toEqual([{ citation: '49 CFR 213.137(b)', exceeded: true }]);
      expect(of('11/16', '5')).toEqual([]);
    }
  });

  it('49 CFR 213.143(b): a heavy-point frog so equipped on class 5 may go down to 4 ft 6 3/8 in', () => {
    const frog = (state: string): readonly ReadingSpec[] => [{ quantity: 'heavyPointFrog', state }];
    const of = (entered: string, state: string) => limitOf('5', 'guardCheckGauge', entered, frog(state));
    expect(of(`4' 6 3/8"`, 'equipped')).toEqual([{ citation: '49 CFR 213.143(b)', exceeded: false }]);
    expect(of(`4' 6 5/16"`, 'equipped')).toEqual([{ citation: '49 CFR 213.143(b)', exceeded: true }]);
    expect(of(`4' 6 3/8"`, 'notEquipped')).toEqual([{ citation: '49 CFR 213.143(a)', exceeded: true }]);
  });

  it('49 CFR 213.135(c): the outer edge of the tread is clear while the point stands as high as the hollow is deep', () => {
    expect(falseFlangeBelowStockRail(3, -6.35)).toBeLessThan(0);
    expect(falseFlangeBelowStockRail(6.35, -6.35)).toBe(0);
    expect(falseFlangeBelowStockRail(7, -6.35)).toBeGreaterThan(0);
  });
});

describe('fit of a flange to a point: plane geometry', () => {
  it('a straight face against a straight side: c(z) = (z − 3/8 in)/tan δ − gap − t − (z − p)/tan β at every depth', () => {
    for (const [face, side] of [
      [70, 80],
      [75, 75],
      [84, 68],
    ] as const) {
      const [height, gap, thickness, top] = [40, 0.8, 2, 11];
      const all = clearances(
        simpleFlangeAtRail(height, rad(face)),
        { gapMm: gap, thicknessMm: thickness, depthMm: top },
        rad(side),
      );
      const rounding = height - 12 + 12 * Math.cos(rad(face));
      const straight = all.filter(({ depthMm }) => depthMm <= rounding);
      expect(straight.length).toBeGreaterThan(60);
      for (const { depthMm, clearanceMm } of straight) {
        const closed =
          (depthMm - 9.525) / Math.tan(rad(face)) - gap - thickness - (depthMm - top) / Math.tan(rad(side));
        // Between the places kept every 0.25 mm the face is straight, and so exact.
        expect(clearanceMm).toBeCloseTo(closed, 9);
      }
    }
  });

  it('parallel face and side are equally clear at every depth', () => {
    const all = clearances(
      simpleFlangeAtRail(40, rad(76)),
      { gapMm: 0, thicknessMm: 3, depthMm: 10 },
      rad(76),
    ).filter(({ depthMm }) => depthMm < 30);
    for (const { clearanceMm } of all) expect(clearanceMm).toBeCloseTo(all[0]!.clearanceMm, 9);
  });

  it('straight sides: the smallest clearance of a brute-force search apart from this program (point-fit.py)', () => {
    for (const { heightMm, faceDeg, gapMm, thicknessMm, topMm, sideDeg, leastMm, atMm } of numbers.straight) {
      const fit = pointFit(
        simpleFlangeAtRail(heightMm, rad(faceDeg)),
        { gapMm, thicknessMm, depthMm: topMm },
        rad(sideDeg),
      );
      expect(Math.abs(fit.least!.clearanceMm - leastMm)).toBeLessThan(0.01);
      expect(Math.abs(fit.least!.depthMm - atMm)).toBeLessThan(0.5);
      const closed = leastMissMm({
        flangeHeightMm: heightMm,
        faceRad: rad(faceDeg),
        edgeMm: gapMm + thicknessMm,
        depthMm: topMm,
        sideRad: rad(sideDeg),
      });
      expect(Math.abs(closed - leastMm)).toBeLessThan(0.002);
    }
  });

  it('traced sides that bend: the same, through the outline as it is drawn and laid', () => {
    for (const { heightMm, faceDeg, gapMm, topMm, sideMm, leastMm } of numbers.bent) {
      const last = sideMm.at(-1)!;
      const point = tracedPoint(
        asTrace(
          lineThrough([[0, -last[0]!], [0, 0], ...sideMm.map(([depth, out]) => [out!, -depth!] as const)]),
        ),
      );
      if (!point.ok) throw new Error(point.message);
      const { thicknessMm, side } = point.value;
      const fit = pointFit(
        simpleFlangeAtRail(heightMm, rad(faceDeg)),
        { gapMm, thicknessMm, depthMm: topMm, side },
        rad(80),
      );
      // The outline is evened over 0.75 mm either way, which rounds its bends.
      expect(Math.abs(fit.least!.clearanceMm - leastMm)).toBeLessThan(0.25);
      expect(fit.least!.clearanceMm).toBeGreaterThanOrEqual(leastMm - 0.02);
    }
  });
});
