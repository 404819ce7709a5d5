import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outlineOf, type Outline } from '~/lib/outline/outline';
import { type Result } from '~/lib/readings/result';
import { wheelFeatures } from '~/lib/wheel/features';
import { registerWheel } from '~/lib/wheel/register';
import { newWheel } from './wheels';

const SEED = { seed: 6224, numRuns: 60 };

const number = fc.oneof(
  { weight: 20, arbitrary: fc.double({ min: -200, max: 200, noNaN: true }) },
  { weight: 1, arbitrary: fc.double() },
  { weight: 2, arbitrary: fc.constantFrom(0, 1, -1, 70, NaN, Infinity, 1e300, 1e-300) },
);
const scattered = fc.array(fc.tuple(number, number), { maxLength: 300 }).map((points) =>
  outlineOf(
    points.map(([x]) => x),
    points.map(([, y]) => y),
  ),
);

/** A line that turns and walks at random, which often looks like part of something. */
const walked = fc
  .tuple(
    fc.array(fc.double({ min: -0.4, max: 0.4, noNaN: true }), { minLength: 1, maxLength: 300 }),
    fc.double({ min: 0.01, max: 5, noNaN: true }),
  )
  .map(([turns, step]) => {
    let [x, y, heading] = [0, 0, 0];
    const points = turns.map((turn) => {
      heading += turn;
      x += step * Math.cos(heading);
      y += step * Math.sin(heading);
      return [x, y] as const;
    });
    return outlineOf(
      points.map(([px]) => px),
      points.map(([, py]) => py),
    );
  });

/** A wheel spoiled: points left out, doubled, swapped, closed to a loop, or in another unit. */
const spoiled = fc
  .tuple(
    fc.array(fc.tuple(fc.nat(700), fc.nat(700)), { maxLength: 8 }),
    fc.nat(400),
    fc.integer({ min: 1, max: 700 }),
    fc.boolean(),
    fc.constantFrom(1, 1 / 25.4, 25.4, 0.1, 0.6, 3),
  )
  .map(([swaps, from, count, closed, unit]) => {
    const { xMm, yMm } = newWheel('s1002');
    const order = Array.from(xMm.keys());
    for (const [a, b] of swaps) order[a % order.length] = b % order.length;
    const kept = order.slice(from, from + count);
    if (closed && kept[0] !== undefined) kept.push(kept[0]);
    return outlineOf(
      kept.map((i) => unit * xMm[i]!),
      kept.map((i) => unit * yMm[i]!),
    );
  });

/** A value that is finite throughout, or a message that says something. */
const expectAnswer = <T>(result: Result<T>, numbers: (value: T) => Iterable<number>): void => {
  if (!result.ok) expect(result.message.length).toBeGreaterThan(20);
  else for (const each of numbers(result.value)) expect(Number.isFinite(each)).toBe(true);
};

const check = (outline: Outline): void => {
  const registered = registerWheel(outline, { mirrored: false });
  expectAnswer(registered, ({ placing }) => [placing.angleRad, placing.dxMm, placing.dyMm]);
  const features = wheelFeatures(registered.ok ? registered.value.outline : outline);
  expectAnswer(features, (all) =>
    Object.values(all).flatMap((each) =>
      each.ok ? [each.value.value, ...each.value.where.flatMap(({ xMm, yMm }) => [xMm, yMm])] : [],
    ),
  );
};

describe('lines that are no wheel', () => {
  it('get an answer, never an exception: points anywhere', () => {
    fc.assert(fc.property(scattered, check), SEED);
  });

  it('lines that wander', () => {
    fc.assert(fc.property(walked, check), SEED);
  });

  it('wheels that were spoiled', () => {
    fc.assert(fc.property(spoiled, check), SEED);
  });

  it('nothing, one point, a straight line, a circle', () => {
    const round = Array.from({ length: 100 }, (_, i) => i / 10);
    for (const outline of [
      outlineOf([], []),
      outlineOf([1], [1]),
      outlineOf(round, round),
      outlineOf(
        round.map((t) => 10 * t),
        round.map(() => 0),
      ),
      outlineOf(
        round.slice(0, 60).map((t) => 60 * Math.cos(t)),
        round.slice(0, 60).map((t) => 60 * Math.sin(t)),
      ),
    ]) {
      expect(registerWheel(outline, { mirrored: false }).ok).toBe(false);
      check(outline);
    }
  });
});
