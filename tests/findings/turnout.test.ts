import { describe, expect, it } from 'vitest';
import type { Trace } from '~/lib/case/trace';
import { findings } from '~/lib/findings';
import { buildContext } from '~/lib/findings/context';
import { keyInputs } from '~/lib/findings/key-inputs';
import { falseFlangeFindings } from '~/lib/findings/turnout/false-flange';
import { referenceShape } from '~/lib/shapes';
import { wholeOutline } from '~/lib/shapes/whole-outline';
import { traceOf } from '../report/traced-record';
import { featuresFrom, hollowWheel } from '../wheel/wheels';
import { found as byId, listed } from './by-id';
import { buildRecord, type EntitySpec, type ReadingSpec } from './record-builder';

const UNDISTURBED = { disturbance: 'undisturbed' } as const;
const OPTIONS = { seed: 1 };

const TIP: readonly ReadingSpec[] = [
  { quantity: 'pointGap', entered: '1/16' },
  { quantity: 'tipThickness', entered: '1/8' },
  { quantity: 'tipDepth', entered: '3/4' },
];
const ALONG: readonly ReadingSpec[] = [
  { quantity: 'gapBehind', slot: 'ft1', entered: '0' },
  { quantity: 'thicknessBehind', slot: 'ft1', entered: '5/16' },
  { quantity: 'depthBehind', slot: 'ft1', entered: '1/2' },
  { quantity: 'gapBehind', slot: 'ft3', entered: '0' },
  { quantity: 'thicknessBehind', slot: 'ft3', entered: '3/4' },
  { quantity: 'depthBehind', slot: 'ft3', entered: '-1/16' },
];
const HAND: readonly ReadingSpec[] = [
  { quantity: 'flangeHeight', slot: 'right', entered: '1 1/8' },
  { quantity: 'flangeAngle', slot: 'right', entered: '75' },
];

const turnout = (
  readings: readonly ReadingSpec[],
  fields: EntitySpec['fields'] = {},
  id = 'x1',
): EntitySpec => ({
  id,
  fields: { name: 'East switch', movement: 'facing', pointRead: 'right', ...UNDISTURBED, ...fields },
  readings,
});

const newWheel = wholeOutline(referenceShape('freight-narrow')!);
const trace = (outline = newWheel, more: Partial<Trace> = {}): Trace =>
  traceOf('t1', { shape: 'wheel', subject: { kind: 'wheelset', id: 'w1' }, side: 'right' }, outline, more);

function record(
  turnouts: readonly EntitySpec[],
  { wheel = HAND, traces = [] }: { wheel?: readonly ReadingSpec[]; traces?: readonly Trace[] } = {},
) {
  return buildRecord({
    fields: { trackClass: '2', alignment: 'tangent' },
    vehicle: [{ id: 'v1', fields: { mark: 'ABC', number: '1', position: 1, firstDerailed: true } }],
    wheelset: [
      { id: 'w1', fields: { vehicle: 'v1', axle: 1, firstDerailed: true, ...UNDISTURBED }, readings: wheel },
    ],
    rail: [{ id: 'r1', fields: { rail: 'right', where: 'POD', section: '136RE', ...UNDISTURBED } }],
    turnout: turnouts,
    changes: { traces },
  });
}

const found = (...args: Parameters<typeof record>) => byId(record(...args), OPTIONS);

describe('fit of a wheel to a point', () => {
  it('from simple readings says so, and gives the smallest over tip and chip', () => {
    const at = found([
      turnout([
        ...TIP,
        { quantity: 'chipLength', entered: '6' },
        { quantity: 'chipDepth', entered: '1/4' },
        { quantity: 'pointPlace', entered: '-12 ft' },
      ]),
    ]);
    const least = at.measured('pointClearanceLeast:x1');
    const all = ['Tip', 'Chip', 'ChipEnd'].map((place) => at.measured(`pointClearance${place}:x1`).value);
    expect(least.value).toBe(Math.min(...all));
    expect(least.remarks.join(' ')).toContain('From simple readings');
    expect(least.remarks.join(' ')).toContain('The tip lies 12.0 ft (3.66 m) before the POD.');
    expect(least.limits[0]!.probabilityExceeds).toBeGreaterThan(0);
  });

  it('from the outline of the wheel names the trace and the rail it stands on', () => {
    const at = found([turnout(TIP)], { wheel: [], traces: [trace()] });
    const tip = at.measured('pointClearanceTip:x1');
    expect(tip.readings).toContain('t1');
    expect(tip.remarks.join(' ')).toContain('new shape of 136RE');
    expect(tip.u).toBeGreaterThan(0.5);
    expect(tip.u).toBeLessThan(4);
    // Seen along the rail a yawed flange is wider, but is moved back as much where it touches the stock rail.
    const yawedMm = at.measured('pointClearanceYawed:x1').value - at.measured('pointClearanceLeast:x1').value;
    expect(yawedMm).not.toBe(0);
    expect(Math.abs(yawedMm)).toBeLessThan(0.5);
  });

  it('leaves out a trace of a wheel that was disturbed, and asks for readings instead', () => {
    const at = found([turnout(TIP)], { wheel: [], traces: [trace(newWheel, { disturbance: 'disturbed' })] });
    expect(at.get('pointClearanceTip:x1').kind).toBe('notMeasured');
  });

  it('leaves out an outline of a wheelset that was disturbed, whatever is said of the outline', () => {
    const before = record([turnout(TIP)], { wheel: [], traces: [trace()] });
    const wheelset = before.entities.wheelset.map((each) => ({
      ...each,
      fields: { ...each.fields, disturbance: 'disturbed' },
    }));
    const at = byId({ ...before, entities: { ...before.entities, wheelset } }, OPTIONS);
    expect(at.get('pointClearanceTip:x1').kind).toBe('notMeasured');
  });

  it('more noise in the trace makes the clearance less sure', () => {
    const of = (acrossMm: number) =>
      found([turnout(TIP)], {
        wheel: [],
        traces: [trace(newWheel, { uncertainty: { acrossMm, scale: 0, because: [] } })],
      }).measured('pointClearanceTip:x1').u;
    expect(of(1)).toBeGreaterThan(of(0.05));
  });

  it('the same record and seed give the same numbers', () => {
    const once = findings(record([turnout([...TIP, ...ALONG])], { traces: [trace()] }), OPTIONS);
    const again = findings(record([turnout([...TIP, ...ALONG])], { traces: [trace()] }), OPTIONS);
    expect(again).toEqual(once);
  });

  it('finds where the flange first touches, behind the tip and before the last place read', () => {
    const sharp: readonly ReadingSpec[] = [
      { quantity: 'pointGap', entered: '0' },
      { quantity: 'tipThickness', entered: '1/32' },
      { quantity: 'tipDepth', entered: '3/4' },
    ];
    // A tip 3/16 in out is met by the flange at once; one 1/32 in out is passed, and the point is met where it has grown.
    expect(found([turnout([...TIP, ...ALONG])]).measured('pointFirstTouch:x1').value).toBe(0);
    const touch = found([turnout([...sharp, ...ALONG])]).measured('pointFirstTouch:x1');
    expect(touch.value).toBeGreaterThan(0);
    expect(touch.value).toBeLessThan(3 * 304.8);
    expect(touch.u).toBeGreaterThan(0);
  });
});

describe('which turnout counts', () => {
  const gap = (turnouts: readonly EntitySpec[]) => keyInputs(record(turnouts), OPTIONS).pointGap.measured;

  it('one 201 ft before the POD does not feed the explanation, one 200 ft before it does', () => {
    const at = (entered: string) => [turnout([...TIP, { quantity: 'pointPlace', entered }])];
    expect(gap(at('-201 ft'))).toBeNull();
    expect(gap(at('-200 ft'))).not.toBeNull();
    expect(gap(at('50 ft'))).not.toBeNull();
    expect(gap(at('51 ft'))).toBeNull();
    expect(found(at('-940 ft')).measured('pointClearanceTip:x1').remarks.join(' ')).toContain(
      'says nothing for or against',
    );
  });

  it('the nearest is taken, and one whose place was not entered says so', () => {
    const near = turnout(
      [
        { quantity: 'pointGap', entered: '1/2' },
        { quantity: 'pointPlace', entered: '5 ft' },
      ],
      {},
      'x2',
    );
    const far = turnout([...TIP, { quantity: 'pointPlace', entered: '-90 ft' }]);
    expect(gap([far, near])!.value).toBeCloseTo(12.7, 6);
    expect(gap([turnout(TIP)])!.remark).toContain('not entered');
  });
});

describe('false flange', () => {
  it('of a hollow tread acts where the tread passes over, and hangs below the stock rail', () => {
    const at = found([turnout([...TIP, ...ALONG])], { wheel: [], traces: [trace(hollowWheel(4))] });
    const hollow = at.measured('falseFlange:x1');
    expect(hollow.value).toBeCloseTo(featuresFrom(hollowWheel(4)).treadHollow, 1);
    // Top of the point 1/2 in below at 1 ft and 1/16 in above at 3 ft: level 8/9 of the way.
    expect(hollow.remarks.join(' ')).toContain('behind the tip');
    const below = at.measured('falseFlangeBelowStockRail:x1');
    expect(below.value).toBeCloseTo(hollow.value - 1.5875, 6);
    expect(below.limits[0]).toMatchObject({ citation: '49 CFR 213.135(c)', exceeded: true });
  });

  it('is not spoken of with a new tread or without a trace', () => {
    expect(found([turnout(TIP)], { traces: [trace()] }).has('falseFlange:x1')).toBe(false);
    expect(found([turnout(TIP)]).has('falseFlange:x1')).toBe(false);
  });

  it('is held against the stock rail only where the point carries the tread, also from a hollow that was read', () => {
    const hollow: ReadingSpec = { quantity: 'treadHollow', slot: 'right', entered: '1/8' };
    const of = (readings: readonly ReadingSpec[], wheel: readonly ReadingSpec[] = [...HAND, hollow]) =>
      listed(falseFlangeFindings(buildContext(record([turnout(readings)], { wheel }), OPTIONS))).get(
        'falseFlangeBelowStockRail:x1',
      );
    // The point 1/16 in above the stock rail at 3 ft, the hollow 1/8 in: 1/16 in below its top.
    expect(of([...TIP, ...ALONG])).toMatchObject({
      kind: 'measured',
      limits: [{ citation: '49 CFR 213.135(c)', exceeded: true }],
    });
    // A foot behind the tip the point still lies 1/2 in low: the stock rail carries the tread there.
    const short = ALONG.filter(({ slot }) => slot === 'ft1');
    expect(of([...TIP, ...short])).toMatchObject({
      kind: 'notMeasured',
      missing: [expect.stringContaining('read its depth farther back')],
    });
    expect(of([...TIP, ...ALONG], HAND)).toMatchObject({
      kind: 'notMeasured',
      missing: [expect.stringContaining('hollow of the tread of the right wheel')],
    });
    const raised = ALONG.map((each) => (each.entered === '-1/16' ? { ...each, entered: '-1/4' } : each));
    expect(of([...TIP, ...raised])).toMatchObject({ limits: [{ exceeded: false }] });
  });

  it('comes at the stock rail from its gauge side in the trailing direction', () => {
    const at = found([turnout([], { movement: 'trailing' })], { wheel: [], traces: [trace(hollowWheel(4))] });
    expect(at.measured('falseFlange:x1').remarks.join(' ')).toContain('trailing');
  });
});

describe('frog readings', () => {
  it('49 CFR 213.137(b): down counts only where the point is worn 6 in back too', () => {
    const down = (...more: readonly ReadingSpec[]) =>
      found([turnout([{ quantity: 'frogPointDown', entered: '3/4' }, ...more])]).measured('frogPointDown:x1');
    expect(down().limits[0]).toMatchObject({ exceeded: true });
    expect(down({ quantity: 'frogPointBack', entered: '7' }).limits[0]).toMatchObject({ exceeded: true });
    expect(down({ quantity: 'frogPointBack', entered: '5' }).limits).toHaveLength(0);
  });

  it.each([
    ['guardCheckGauge', '54 1/4', '54 3/16'],
    ['guardFaceGauge', '53 1/8', '53 3/16'],
    ['flangewayDepth', '1 1/2', '1 7/16'],
    ['flangewayWidth', '1 1/2', '1 7/16'],
    ['frogTreadWear', '3/8', '7/16'],
  ])('%s of class 2: %s in is allowed, %s in is not', (quantity, allowed, beyond) => {
    const at = (entered: string) =>
      found([turnout([{ quantity, entered }])]).measured(`${quantity}:x1`).limits[0]!;
    expect(at(allowed).exceeded).toBe(false);
    expect(at(beyond).exceeded).toBe(true);
    expect(at(beyond).citation).toMatch(/^49 CFR 213\.(133|137|143)/);
  });
});
