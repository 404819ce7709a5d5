import { describe, expect, it } from 'vitest';
import type { Trace } from '~/lib/case/trace';
import type { Outline } from '~/lib/outline/outline';
import { pointReachMargin } from '~/lib/explanations/margins/point-reach';
import { buildContext } from '~/lib/findings/context';
import { pointClearanceFindings } from '~/lib/findings/turnout/point-clearance';
import { pointOutlineFindings } from '~/lib/findings/turnout/point-outlines';
import { keyInputs } from '~/lib/findings/key-inputs';
import { traceOf } from '../report/traced-record';
import { straightPoint } from '../turnout/points';
import { listed } from './by-id';
import { buildRecord, type ReadingSpec } from './record-builder';

const UNDISTURBED = { disturbance: 'undisturbed' } as const;
const rad = (degrees: number): number => (degrees * Math.PI) / 180;

const GAP_AND_DEPTH: readonly ReadingSpec[] = [
  { quantity: 'pointGap', entered: '1/16' },
  { quantity: 'tipDepth', entered: '3/4' },
];
const THICK: ReadingSpec = { quantity: 'tipThickness', entered: '1/8' };
const FOOT: readonly ReadingSpec[] = [
  { quantity: 'gapBehind', slot: 'ft1', entered: '0' },
  { quantity: 'depthBehind', slot: 'ft1', entered: '1/2' },
];

const outline = (
  behindMm: number,
  line: Outline = straightPoint(3.175, rad(80)),
  more: Partial<Trace> = {},
): Trace =>
  traceOf(`p${behindMm}`, { shape: 'point', subject: { kind: 'turnout', id: 'x1' }, side: 'right' }, line, {
    behindMm,
    ...more,
  });

const recordOf = (readings: readonly ReadingSpec[], traces: readonly Trace[], fields = {}) =>
  buildRecord({
    fields: { trackClass: '2', alignment: 'tangent' },
    vehicle: [{ id: 'v1', fields: { mark: 'ABC', number: '1', position: 1, firstDerailed: true } }],
    wheelset: [
      {
        id: 'w1',
        fields: { vehicle: 'v1', axle: 1, firstDerailed: true, ...UNDISTURBED },
        readings: [
          { quantity: 'flangeHeight', slot: 'right', entered: '1 1/8' },
          { quantity: 'flangeAngle', slot: 'right', entered: '75' },
        ],
      },
    ],
    turnout: [
      {
        id: 'x1',
        fields: { name: 'East', movement: 'facing', pointRead: 'right', ...UNDISTURBED, ...fields },
        readings,
      },
    ],
    changes: { traces },
  });

function found(...args: Parameters<typeof recordOf>) {
  const context = buildContext(recordOf(...args), { seed: 1 });
  return listed([...pointOutlineFindings(context), ...pointClearanceFindings(context)]);
}

const tip = (...args: Parameters<typeof found>) => found(...args).measured('pointClearanceTip:x1');

describe('an outline of a point', () => {
  it('with gap and depth stands for the thickness, and the findings name it', () => {
    const traced = tip(GAP_AND_DEPTH, [outline(0)]);
    const read = tip([...GAP_AND_DEPTH, THICK], []);
    expect(traced.value).toBeCloseTo(read.value, 1);
    expect(traced.readings).toContain('p0');
    expect(traced.method.id).toBe('point-fit');
    expect(traced.remarks.join(' ')).toContain('Gauge side of the point from its outline at the tip.');
    expect(read.remarks.join(' ')).toContain('No outline of the point was used');
  });

  it('decides by its form, not only by its thickness', () => {
    // The same thickness at the top, but the side leans out far flatter than the usual 80°.
    const flat = straightPoint(3.175, rad(55));
    expect(tip(GAP_AND_DEPTH, [outline(0, flat)]).value).toBeLessThan(
      tip(GAP_AND_DEPTH, [outline(0)]).value - 0.8,
    );
  });

  it('is uncertain by what is uncertain across its line, as a whole', () => {
    const of = (acrossMm: number) =>
      tip(GAP_AND_DEPTH, [outline(0, undefined, { uncertainty: { acrossMm, scale: 0, because: [] } })]).u;
    expect(of(1) ** 2 - of(0.1) ** 2).toBeCloseTo(2 * (1 - 0.01), 0);
  });

  it('without gap or depth there judges nothing and says what to read', () => {
    const at = found([...GAP_AND_DEPTH, THICK], [outline(304.8)]);
    const section = at.get('pointOutline:x1:mm305');
    expect(section).toMatchObject({
      kind: 'notMeasured',
      missing: [
        'gap between point and stock rail 1 ft behind the tip',
        'depth of the point below the stock rail 1 ft behind the tip',
      ],
    });
    expect(at.measured('pointClearanceTip:x1').readings).not.toContain('p304.8');
    expect(at.has('pointFirstTouch:x1')).toBe(false);
    expect(found([], [outline(0)]).get('pointClearanceTip:x1')).toMatchObject({
      kind: 'notMeasured',
      missing: ['gap between point and stock rail at the tip', 'depth of the tip below the stock rail'],
    });
    const far = found(GAP_AND_DEPTH, [outline(0), outline(3000)]).get('pointOutline:x1:mm3000');
    expect(far.kind === 'notMeasured' && far.missing[0]).toContain('not more than');
  });

  it('between two places read takes gap and depth between them', () => {
    const wide = straightPoint(8, rad(80));
    const at = found([...GAP_AND_DEPTH, ...FOOT], [outline(0), outline(304.8, wide), outline(152.4, wide)]);
    const half = at.measured('pointClearanceBehind:x1:mm152');
    expect(half.readings).toEqual(expect.arrayContaining(['p152.4']));
    expect(half.title).toContain('6');
    expect(at.measured('pointClearanceBehind:x1:ft1').readings).toContain('p304.8');
  });

  it('that was disturbed, of a disturbed turnout, or of the other point judges nothing', () => {
    const left = { ...outline(0), side: 'left' } as const;
    const disturbed = outline(0, undefined, { disturbance: 'disturbed' });
    for (const at of [found(GAP_AND_DEPTH, [left]), found(GAP_AND_DEPTH, [disturbed])])
      expect(at.get('pointClearanceTip:x1')).toMatchObject({
        kind: 'notMeasured',
        missing: ['thickness of the tip, or its outline'],
      });
    const section = found(GAP_AND_DEPTH, [disturbed]).get('pointOutline:x1:mm0');
    expect(section.kind === 'notMeasured' && section.missing[0]).toContain('undisturbed');
    const turnout = found(GAP_AND_DEPTH, [outline(0)], { disturbance: 'disturbed' });
    expect(turnout.get('pointClearanceTip:x1').kind).toBe('notMeasured');
  });

  it('differing from the reading by more than both allow says so', () => {
    const at = found([...GAP_AND_DEPTH, THICK], [outline(0, straightPoint(9, rad(80)))]);
    expect(at.measured('pointOutline:x1:mm0').remarks.join(' ')).toContain('find out which of them errs');
    expect(at.measured('pointClearanceTip:x1').readings).toContain('p0');
  });

  it('taken within a chip shows its floor', () => {
    const chip: readonly ReadingSpec[] = [
      { quantity: 'chipLength', entered: '4' },
      { quantity: 'chipDepth', entered: '1/4' },
    ];
    const at = found([...GAP_AND_DEPTH, ...chip], [outline(0)]);
    const plain = found([...GAP_AND_DEPTH, THICK, ...chip], []);
    expect(at.measured('pointClearanceChip:x1').value).toBeCloseTo(
      plain.measured('pointClearanceChip:x1').value,
      1,
    );
  });
});

describe('the margin of the fact that the point could be struck', () => {
  const CHIP: readonly ReadingSpec[] = [
    { quantity: 'chipFrom', entered: '0' },
    { quantity: 'chipLength', entered: '4' },
    { quantity: 'chipDepth', entered: '1/4' },
  ];
  const margin = (at: ReturnType<typeof recordOf>, faceRad: number): number => {
    const inputs = keyInputs(at, { seed: 1 });
    return pointReachMargin.compute([
      ...pointReachMargin.inputs.map((id) => inputs[id].measured?.value ?? NaN),
      faceRad,
    ]);
  };

  it.each([
    ['a tip', []],
    ['a tip with a chip', CHIP],
  ])('is that of the findings for %s from simple readings', (_, chip) => {
    const readings = [
      ...GAP_AND_DEPTH,
      THICK,
      ...chip,
      { quantity: 'pointFaceAngle', entered: '78' },
      ...(chip.length > 0 ? [] : [{ quantity: 'chipLength', entered: '0' } as const]),
    ];
    const least = found(readings, []).measured('pointClearanceLeast:x1').value;
    const withNone = chip.length > 0 ? readings : [...readings, { quantity: 'chipDepth', entered: '0' }];
    expect(margin(recordOf(withNone, []), rad(75))).toBeCloseTo(least, 1);
  });

  it('takes thickness and slope from the outline of the tip, and none from one that is not placed', () => {
    const of = (traces: readonly Trace[], readings = GAP_AND_DEPTH) =>
      keyInputs(recordOf(readings, traces), { seed: 1 });
    const traced = of([outline(0)]);
    expect(traced.tipThickness.measured?.readings).toEqual(['p0']);
    expect(traced.pointSideSlope.measured?.value).toBeCloseTo(rad(80), 3);
    expect(of([outline(0)], []).pointSideSlope.measured).toBeNull();
    expect(of([outline(304.8)]).tipThickness.measured).toBeNull();
    const disturbed = of([outline(0, undefined, { disturbance: 'disturbed' })]);
    expect(disturbed.tipThickness.measured).toBeNull();
  });
});
