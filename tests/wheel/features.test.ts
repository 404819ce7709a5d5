import { describe, expect, it } from 'vitest';
import { partOf } from '~/lib/outline/arc';
import { outlineOf, type Outline } from '~/lib/outline/outline';
import { AS_DRAWN } from '~/lib/outline/placing';
import { WHEEL_FEATURES } from '~/lib/wheel/feature-table';
import { wheelFeatures } from '~/lib/wheel/features';
import { registerWheel, type RegisteredWheel } from '~/lib/wheel/register';
import { noisy } from './noisy';
import { drawn, featuresFrom, hollowWheel, newWheel, NEW_WHEELS } from './wheels';

const DEGREE = Math.PI / 180;

const registered = (outline: Outline, mirrored = false): RegisteredWheel => {
  const result = registerWheel(outline, { mirrored });
  if (!result.ok) throw new Error(result.message);
  return result.value;
};
const refusal = (outline: Outline): string => {
  const result = registerWheel(outline, { mirrored: false });
  return result.ok ? '' : result.message;
};
const scaled = ({ xMm, yMm }: Outline, by: number): Outline =>
  outlineOf(
    xMm.map((x) => x * by),
    yMm.map((y) => y * by),
  );
/** What is left of a wheel's line where it is further from the back, or nearer, than the places given. */
const between = (outline: Outline, from: number, to: number): Outline => partOf(outline, from, to);

describe('a wheel with a hollow tread', () => {
  const wheel = hollowWheel(5);
  const at = (xMm: number): number => {
    const i = wheel.xMm.findIndex((x, k) => k > 200 && x >= xMm);
    return wheel.yMm[i]!;
  };
  const places = Array.from({ length: 80 }, (_, i) => 55 + i);
  const top = Math.max(...places.filter((x) => x > 105 && x < 132).map(at));
  const lowest = Math.min(...places.filter((x) => x < 105).map(at));

  it('gives the hollow and the false flange that were worn into it', () => {
    const found = featuresFrom(wheel);
    expect(top - lowest).toBeGreaterThan(2.5);
    expect(Math.abs(found.treadHollow - (top - lowest))).toBeLessThan(0.05);
    expect(Math.abs(found.falseFlange - (top - at(70)))).toBeLessThan(0.05);
    expect(found.flangeHeight).toBeCloseTo(25.4 - at(70), 1);
  });

  it('has more of both the deeper it is worn, and none when new', () => {
    const [shallow, deep] = [featuresFrom(hollowWheel(3.5)), featuresFrom(hollowWheel(6))];
    expect(deep.treadHollow - shallow.treadHollow).toBeGreaterThan(2);
    expect(deep.falseFlange).toBeGreaterThan(shallow.falseFlange);
    expect(featuresFrom(newWheel('freight-narrow')).treadHollow).toBeLessThan(0.02);
  });

  it('is measured within 0.3 mm under pencil noise of 0.1 mm, 95 times of 100', () => {
    const off = Array.from({ length: 100 }, (_, k) =>
      Math.abs(featuresFrom(noisy(wheel, 0.1, 0.7, k)).treadHollow - (top - lowest)),
    );
    expect(off.filter((mm) => mm < 0.3).length).toBeGreaterThanOrEqual(95);
  });
});

describe('features of a noisy line', () => {
  const truth = (id: string): Record<'flangeHeight' | 'flangeThickness' | 'flangeAngle', number> => {
    const { flangeHeight, flangeThickness, flangeAngle } = featuresFrom(newWheel(id, 0.1));
    return { flangeHeight, flangeThickness, flangeAngle };
  };

  it.each(NEW_WHEELS.map(({ id }) => id))('%s within the floors, 95 times of 100 at 0.1 mm', (id) => {
    const want = truth(id);
    let good = 0;
    for (let k = 0; k < 100; k += 1) {
      const found = featuresFrom(noisy(newWheel(id), 0.1, 0.7, k));
      const within =
        Math.abs(found.flangeHeight - want.flangeHeight) < 0.5 &&
        Math.abs(found.flangeThickness - want.flangeThickness) < 0.5 &&
        Math.abs(found.flangeAngle - want.flangeAngle) < 2 * DEGREE;
      if (within) good += 1;
    }
    expect(good).toBeGreaterThanOrEqual(95);
  });

  it.each(NEW_WHEELS.map(({ id }) => id))('%s does not make the flange steeper at 0.2 mm', (id) => {
    const want = truth(id).flangeAngle;
    const off = Array.from(
      { length: 100 },
      (_, k) => featuresFrom(noisy(newWheel(id), 0.2, 0.7, k)).flangeAngle - want,
    );
    const mean = off.reduce((sum, each) => sum + each, 0) / off.length;
    expect(Math.abs(mean)).toBeLessThan(0.6 * DEGREE);
    expect(Math.sqrt(off.reduce((sum, each) => sum + each * each, 0) / off.length)).toBeLessThan(
      1.4 * DEGREE,
    );
  });
});

describe('registration of a wheel', () => {
  const wheel = newWheel('s1002');

  it('says when the hand is not as said, and when the drawing is upside down', () => {
    const mirror = drawn(wheel, { ...AS_DRAWN, mirrored: true }, false);
    expect(registered(mirror).remarks.join()).toContain('other side');
    expect(registered(mirror, true).remarks).toEqual([]);
    expect(registered(wheel, true).remarks.join()).toContain('other side');
    const upsideDown = registered(drawn(wheel, { ...AS_DRAWN, angleRad: Math.PI - 0.3 }, false));
    expect(upsideDown.remarks.join()).toContain('upside down');
    expect(Math.max(...upsideDown.outline.yMm)).toBeCloseTo(28, 2);
  });

  it('refuses another scale and says which unit was meant', () => {
    expect(refusal(scaled(wheel, 1 / 25.4))).toMatch(/Wrong scale.*inches/);
    expect(refusal(scaled(wheel, 25.4))).toMatch(/Wrong scale.*millimetres/);
    expect(refusal(scaled(wheel, 0.45))).toContain('cale');
    expect(refusal(scaled(wheel, 2.2))).toContain('cale');
  });

  it('refuses a part of a wheel that says too little, and says what to trace', () => {
    const n = wheel.xMm.length;
    const tread = wheel.xMm.findIndex((x, i) => i > 100 && x > 66);
    expect(refusal(between(wheel, Math.round(n / 2), n))).toContain('No flange');
    expect(refusal(between(wheel, 0, tread))).toContain('70 mm');
  });

  it('takes the upright from the tread where the back is not in the trace, and says so', () => {
    const tip = wheel.yMm.indexOf(Math.max(...wheel.yMm));
    const { remarks, outline } = registered(between(wheel, tip - 12, wheel.xMm.length));
    expect(remarks.join()).toContain('back of the flange is not in the trace');
    const features = wheelFeatures(outline);
    if (!features.ok) throw new Error(features.message);
    const { flangeHeight, flangeThickness, rimWidth } = features.value;
    expect(flangeHeight.ok && Math.abs(flangeHeight.value.value - 28)).toBeLessThan(1.5);
    expect(flangeThickness.ok ? '' : flangeThickness.message).toContain('back of the flange');
    expect(rimWidth.ok).toBe(false);
  });

  it('warns of a short back', () => {
    const from = wheel.yMm.findIndex((y) => y > -1);
    expect(registered(between(wheel, from, wheel.xMm.length)).remarks.join()).toContain('straight back');
  });

  it('leaves out, with the reason, what a short trace does not reach', () => {
    const to = wheel.xMm.findIndex((x, i) => i > 100 && x > 85);
    const features = wheelFeatures(registered(between(wheel, 0, to)).outline);
    if (!features.ok) throw new Error(features.message);
    const missing = WHEEL_FEATURES.filter(({ id }) => !features.value[id].ok).map(({ id }) => id);
    expect(missing).toEqual(['treadHollow', 'falseFlange', 'rimWidth']);
  });
});
