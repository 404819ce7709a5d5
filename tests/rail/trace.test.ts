import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Trace } from '~/lib/case/trace';
import { outlineOf, type Outline } from '~/lib/outline/outline';
import { RAIL_FEATURES, RAIL_FEATURE_IDS, railFeatures, type RailFeatureId } from '~/lib/rail/features';
import { registerRail } from '~/lib/rail/register';
import { railTraceFeatures } from '~/lib/rail/trace-features';
import { drawn, gaugeSideAt, referenceOf, worn, type Wear } from './worn';

const RAD = Math.PI / 180;
const SECTIONS = ['115RE', '132RE', '136RE', '141RE', '60E1', '54E1'];
const REFERENCES = new Map(SECTIONS.map((id) => [id, referenceOf(id)]));
const reference = (id: string): Outline => REFERENCES.get(id)!;

/** Whole sections, a head with some web, a head with its undersides. */
const BELOW_MM = { section: 400, web: 75, head: 50 };

const wearOf = (sectionId: string): Wear => ({
  sectionId,
  topMm: 7,
  faceDeg: 68,
  faceMm: 6,
  atDepthMm: 15.875,
});

function read(outline: Outline, sectionId: string, mirrored = false) {
  const placed = registerRail(outline, { mirrored, reference: reference(sectionId) });
  if (!placed.ok) throw new Error(placed.message);
  const found = railFeatures(placed.value, reference(sectionId));
  const value = (id: RailFeatureId): number => {
    const feature = found[id];
    if (!feature.ok) throw new Error(`${id}: ${feature.message}`);
    return feature.value.value;
  };
  return { ...placed.value, found, value };
}

describe('a clean trace of a worn rail', () => {
  const cases = SECTIONS.flatMap((id) =>
    Object.entries(BELOW_MM).flatMap(([what, below]) =>
      [0, 37, -160].map((turn) => [id, what, below, turn] as const),
    ),
  );
  it.each(cases)('%s, %s (%i mm down), turned %i°: within 0.02 mm and 0.2°', (id, _, below, turnDeg) => {
    const mirrored = turnDeg === 37;
    const shape = worn(wearOf(id), below);
    const found = read(drawn(shape, { mirrored, turnDeg }), id, mirrored);
    expect(Math.abs(found.value('verticalLoss') - 7)).toBeLessThan(0.02);
    expect(Math.abs(found.value('gaugeFaceLoss') - 6)).toBeLessThan(0.02);
    expect(Math.abs(found.value('gaugeFaceAngle') / RAD - 68)).toBeLessThan(0.2);
    const at14 = gaugeSideAt(shape, -21) - gaugeSideAt(reference(id), -21);
    expect(Math.abs(found.value('gaugeFaceLossEu') - at14)).toBeLessThan(0.02);
  });

  it('of a new rail has lost nothing and has its head width', () => {
    for (const id of SECTIONS) {
      const found = read(drawn(reference(id), { turnDeg: 12 }), id);
      expect(Math.abs(found.value('verticalLoss')), id).toBeLessThan(0.01);
      expect(Math.abs(found.value('gaugeFaceLoss')), id).toBeLessThan(0.01);
      expect(Math.abs(found.value('headAreaLoss')), id).toBeLessThan(0.001);
      expect(found.value('headWidth') + 2 * gaugeSideAt(reference(id), -15.875), id).toBeCloseTo(0, 1);
      expect(found.value('gaugeFaceAngle') / RAD, id).toBeGreaterThan(82);
    }
  });

  it('comes out the same whichever way it was traced', () => {
    const shape = drawn(worn(wearOf('136RE'), 75), { turnDeg: 20 });
    const backward = outlineOf(shape.xMm.slice().reverse(), shape.yMm.slice().reverse());
    const [a, b] = [read(shape, '136RE'), read(backward, '136RE')];
    expect(a.value('verticalLoss')).toBeCloseTo(b.value('verticalLoss'), 2);
    expect(a.value('gaugeFaceLoss')).toBeCloseTo(b.value('gaugeFaceLoss'), 2);
  });

  it('loses the area between the new and the worn head', () => {
    const found = read(worn({ ...wearOf('60E1'), topMm: 5, faceMm: 0.001, faceDeg: 87 }, 400), '60E1');
    // Whole head above the level, by its width from the arcs: about 72 mm wide and 34 mm high.
    expect(found.value('headAreaLoss')).toBeGreaterThan((5 * 50) / (72 * 36));
    expect(found.value('headAreaLoss')).toBeLessThan((5 * 72) / (72 * 30));
  });
});

describe('a drawn trace of a worn rail', () => {
  it('0.15 mm of pencil noise: within 0.5 mm and 2° in at least 95 of 100 random wears and turns', () => {
    let good = 0;
    for (let seed = 0; seed < 100; seed += 1) {
      const id = SECTIONS[seed % SECTIONS.length]!;
      const wear = {
        sectionId: id,
        topMm: 1 + (seed % 6),
        faceDeg: 60 + (seed % 10),
        faceMm: 3 + (seed % 3),
        atDepthMm: 15.875,
      };
      const below = Object.values(BELOW_MM)[seed % 3]!;
      const found = read(drawn(worn(wear, below), { turnDeg: seed * 7 - 180, noiseMm: 0.15, seed }), id);
      if (
        Math.abs(found.value('verticalLoss') - wear.topMm) < 0.5 &&
        Math.abs(found.value('gaugeFaceLoss') - wear.faceMm) < 0.5 &&
        Math.abs(found.value('gaugeFaceAngle') / RAD - wear.faceDeg) < 2
      ) {
        good += 1;
      }
    }
    expect(good).toBeGreaterThanOrEqual(95);
  }, 60_000);
});

describe('what the trace does not show', () => {
  it('only the head: said, and placed by its lower corners', () => {
    const found = read(worn(wearOf('136RE'), 46), '136RE');
    expect(['head', 'section']).toContain(found.parts);
    expect(found.newTopMm).not.toBeNull();
  });

  it('no lower corner: no vertical loss, with the reason', () => {
    const found = read(worn(wearOf('136RE'), 32), '136RE');
    expect(found.parts).toBe('top');
    expect(found.newTopMm).toBeNull();
    expect(found.remarks.join(' ')).toMatch(/does not reach the underside/);
    expect(found.found.verticalLoss).toMatchObject({ ok: false });
    expect(found.found.headAreaLoss).toMatchObject({ ok: false });
    expect(found.value('headWidth')).toBeGreaterThan(60);
  });

  it('no section chosen: angle and width still, no losses', () => {
    const placed = registerRail(worn(wearOf('136RE'), 400), { mirrored: false, reference: null });
    if (!placed.ok) throw new Error(placed.message);
    const found = railFeatures(placed.value, null);
    expect(found.verticalLoss.ok).toBe(false);
    expect(found.gaugeFaceLoss.ok).toBe(false);
    expect(found.headWidth.ok).toBe(true);
    if (found.gaugeFaceAngle.ok) expect(found.gaugeFaceAngle.value.value / RAD).toBeCloseTo(68, 0);
  });

  it('paper has no upright: no cant', () => {
    expect(read(worn(wearOf('60E1'), 400), '60E1').found.railCant).toMatchObject({ ok: false });
  });

  it.each([
    ['a wrong scale', (x: number, y: number) => [x / 10, y / 10], /scale/],
    ['inches taken for mm', (x: number, y: number) => [x / 25.4, y / 25.4], /scale/],
    ['twice the size', (x: number, y: number) => [x * 3, y * 3], /scale/],
    ['a straight line', (x: number) => [x, 0], /straight|crosses/],
  ] as const)('%s is refused', (_, change, message) => {
    const shape = worn(wearOf('136RE'), 60);
    const points = [...shape.xMm].map((x, i) => change(x, shape.yMm[i]!));
    const outline = outlineOf(
      points.map(([x]) => x!),
      points.map(([, y]) => y!),
    );
    const found = registerRail(outline, { mirrored: false, reference: reference('136RE') });
    expect(found.ok).toBe(false);
    if (!found.ok) expect(found.message).toMatch(message);
  });
});

const FILE: Trace['making'] = {
  by: 'file',
  unit: 'mm',
  columns: [0, 1],
  flipped: { x: false, y: false },
};

const traceOf = (outline: Outline, over: Partial<Trace> = {}) => ({
  id: 'trace-1',
  making: FILE,
  pointsMm: Float64Array.from([...outline.xMm].flatMap((x, i) => [x, outline.yMm[i]!])),
  mirrored: false,
  uncertainty: { acrossMm: 0.15, scale: 0.002, because: [] },
  hand: null,
  ...over,
});

describe('a rail trace with its uncertainty', () => {
  const shape = drawn(worn(wearOf('136RE'), 60), { turnDeg: 20, noiseMm: 0.15, seed: 3 });
  const result = railTraceFeatures(traceOf(shape), reference('136RE'), 1);
  if (!result.ok) throw new Error(result.message);
  const rail = result.value;

  it('gives each feature or the reason why not, the truth within 3 u', () => {
    expect(Object.keys(rail.features).sort()).toEqual([...RAIL_FEATURE_IDS].sort());
    expect(RAIL_FEATURES.map(({ id }) => id)).toEqual([...RAIL_FEATURE_IDS]);
    const truth: [RailFeatureId, number][] = [
      ['verticalLoss', 7],
      ['gaugeFaceLoss', 6],
      ['gaugeFaceAngle', 68 * RAD],
    ];
    for (const [id, value] of truth) {
      const feature = rail.features[id];
      if (!feature.ok) throw new Error(feature.message);
      expect(Math.abs(feature.value.value - value), id).toBeLessThan(3 * feature.value.u);
      expect(feature.value.u, id).toBeGreaterThan(0);
    }
  });

  it('tells the cant only where the upright of the drawing is said to be square to the track', () => {
    expect(rail.features.railCant.ok).toBe(false);
    // Leaning towards the gauge side, which lies on the left of the drawing: turned counter-clockwise.
    const leaning = drawn(worn(wearOf('136RE'), 60), { turnDeg: 1.43, noiseMm: 0.05, seed: 4 });
    const mirror = outlineOf(
      leaning.xMm.map((x) => -x),
      leaning.yMm,
    );
    for (const [outline, mirrored] of [
      [leaning, false],
      [mirror, true],
    ] as const) {
      const plumb = railTraceFeatures(
        traceOf(outline, {
          mirrored,
          making: { ...FILE, plumb: true },
          uncertainty: { acrossMm: 0.05, scale: 0, because: [] },
        }),
        reference('136RE'),
        1,
      );
      if (!plumb.ok || !plumb.value.features.railCant.ok) throw new Error('There is no cant.');
      const { value, u } = plumb.value.features.railCant.value;
      expect(value / RAD).toBeCloseTo(1.43, 0);
      expect(Math.abs(value / RAD - 1.43)).toBeLessThan(0.2);
      expect(u).toBeGreaterThan(0);
      expect(u / RAD).toBeLessThan(0.5);
    }
    const turned = railTraceFeatures(
      traceOf(shape, { making: { ...FILE, plumb: true } }),
      reference('136RE'),
      1,
    );
    expect(turned.ok && turned.value.features.railCant).toMatchObject({
      ok: false,
      message: expect.stringContaining('20° out of upright'),
    });
  });

  it('is the same again, and surer with a finer line', () => {
    const again = railTraceFeatures(traceOf(shape), reference('136RE'), 1);
    expect(again).toEqual(result);
    const finer = railTraceFeatures(
      traceOf(shape, { uncertainty: { acrossMm: 0.03, scale: 0, because: [] } }),
      reference('136RE'),
      1,
    );
    if (!finer.ok) throw new Error(finer.message);
    for (const id of ['verticalLoss', 'gaugeFaceLoss', 'headWidth'] as const) {
      const [coarse, fine] = [rail.features[id], finer.value.features[id]];
      if (!coarse.ok || !fine.ok) throw new Error(id);
      expect(fine.value.u, id).toBeLessThan(coarse.value.u / 2);
    }
  });

  it('a correction by hand moves the trace against the section and is said', () => {
    const hand = { dxMm: 1, dyMm: -2, angleRad: 0, reason: 'the base was corroded' };
    const moved = railTraceFeatures(traceOf(shape, { hand }), reference('136RE'), 1);
    if (!moved.ok) throw new Error(moved.message);
    const difference = (id: RailFeatureId): number => {
      const [a, b] = [rail.features[id], moved.value.features[id]];
      if (!a.ok || !b.ok) throw new Error(id);
      return b.value.value - a.value.value;
    };
    // The axis now passes the worn top 1 mm further over, where the pencil shook otherwise.
    expect(Math.abs(difference('verticalLoss') - 2)).toBeLessThan(0.1);
    expect(difference('headWidth')).toBeCloseTo(0, 3);
    // 1 mm across, and 2 mm lower on a side that leans 1 in 40.
    expect(difference('gaugeFaceLoss')).toBeCloseTo(1.05, 1);
    expect(moved.value.remarks.join(' ')).toMatch(/the base was corroded/);
  });
});

describe('random and degenerate lines', () => {
  const number = fc.oneof(
    { weight: 5, arbitrary: fc.double({ min: -150, max: 150, noNaN: true }) },
    { weight: 1, arbitrary: fc.double() },
  );
  it('are refused or read, never thrown on', () => {
    fc.assert(
      fc.property(fc.array(number, { maxLength: 60 }), fc.boolean(), (numbers, mirrored) => {
        const pairs = Math.floor(numbers.length / 2);
        const outline = outlineOf(numbers.slice(0, pairs), numbers.slice(pairs, 2 * pairs));
        for (const laid of [reference('136RE'), null]) {
          const placed = registerRail(outline, { mirrored, reference: laid });
          if (placed.ok) railFeatures(placed.value, laid);
          else expect(placed.message.length).toBeGreaterThan(10);
        }
      }),
      { seed: 9041, numRuns: 300 },
    );
  });

  it('arcs, zigzags and pieces of rails too', () => {
    const piece = fc.record({
      from: fc.double({ min: 0, max: 1, noNaN: true }),
      share: fc.double({ min: 0.02, max: 1, noNaN: true }),
      scale: fc.double({ min: 0.3, max: 3, noNaN: true }),
      turn: fc.double({ min: -4, max: 4, noNaN: true }),
      every: fc.integer({ min: 1, max: 60 }),
    });
    fc.assert(
      fc.property(piece, ({ from, share, scale, turn, every }) => {
        const whole = reference('60E1');
        const n = whole.xMm.length;
        const start = Math.floor(from * n * (1 - share));
        const keep = (_: number, i: number): boolean =>
          i >= start && i < start + share * n && i % every === 0;
        const part = outlineOf(whole.xMm.filter(keep), whole.yMm.filter(keep));
        const line = outlineOf(
          part.xMm.map((x, i) => scale * (x * Math.cos(turn) - part.yMm[i]! * Math.sin(turn))),
          part.xMm.map((x, i) => scale * (x * Math.sin(turn) + part.yMm[i]! * Math.cos(turn))),
        );
        const placed = registerRail(line, { mirrored: false, reference: whole });
        if (placed.ok) railFeatures(placed.value, whole);
      }),
      { seed: 9042, numRuns: 60 },
    );
  });
});
