import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { curvatureOfDegrees } from '~/lib/track/curvature';
import { segmentLine, type FittedLine } from '~/lib/track/segments';
import { normalDraws } from '~/lib/readings/draws';

const SPACING_M = 4.7244;
const TIMEOUT_MS = 30_000;
const U = curvatureOfDegrees(0.1);

/** Tangent to −600, transition to −360, a curve of `degrees` from there: positions in station spacings. */
const spiralled =
  (degrees: number) =>
  (steps: number): number =>
    curvatureOfDegrees(degrees * Math.min(1, Math.max(0, (steps + 60) / 24)));

function fitted(
  curvature: (steps: number) => number,
  from = -90,
  noise: (index: number) => number = () => 0,
): FittedLine {
  const steps = Array.from({ length: -from + 1 }, (_, i) => from + i);
  const line = segmentLine(
    steps.map((step) => step * SPACING_M),
    steps.map((step, i) => curvature(step) + U * noise(i)),
    U,
  );
  if (line === null) throw new Error('no line');
  return line;
}

describe('tangents, transitions and curves', () => {
  it('finds a curve with its transition, and where they meet', () => {
    const { parts, leftOverPerM } = fitted(spiralled(6));
    expect(parts.map(({ kind }) => kind)).toEqual(['tangent', 'transition', 'curve']);
    expect(parts[1]?.fromM).toBeCloseTo(-60 * SPACING_M, 0);
    expect(parts[2]?.fromM).toBeCloseTo(-36 * SPACING_M, 0);
    expect(parts[2]?.curvaturePerM).toBeCloseTo(curvatureOfDegrees(6), 5);
    expect(leftOverPerM).toBeLessThan(U / 5);
  });

  it(
    'covers the true values with its uncertainty, in as many draws as it says',
    () => {
      let within = 0;
      let whole = 0;
      const draws = 30;
      for (let seed = 0; seed < draws; seed += 1) {
        const noise = normalDraws('curvature', seed, 91);
        const { parts } = fitted(spiralled(6), -90, (i) => noise[i] ?? 0);
        if (parts.map(({ kind }) => kind).join(' ') !== 'tangent transition curve') continue;
        whole += 1;
        const curve = parts[2];
        const inCurve =
          Math.abs((curve?.curvaturePerM ?? 0) - curvatureOfDegrees(6)) <= 2 * (curve?.uPerM ?? 0);
        const inBreak = Math.abs((curve?.fromM ?? 0) + 36 * SPACING_M) <= 2 * (curve?.uFromM ?? 0);
        if (inCurve) within += 1;
        if (inBreak) within += 1;
      }
      expect(whole).toBeGreaterThan(draws * 0.85);
      // Two intervals of about 95 % in each draw.
      expect(within / (2 * whole)).toBeGreaterThan(0.85);
    },
    TIMEOUT_MS,
  );

  it('says tangent of a straight line and curve of a circle, in one part each', () => {
    for (const [degrees, kind] of [
      [0, 'tangent'],
      [4, 'curve'],
    ] as const) {
      const noise = normalDraws(kind, 3, 41);
      const { parts } = fitted(
        () => curvatureOfDegrees(degrees),
        -40,
        (i) => noise[i] ?? 0,
      );
      expect(parts.map((part) => part.kind)).toEqual([kind]);
    }
  });

  it('passes over stations that were not read, and asks for six', () => {
    const positions = Array.from({ length: 91 }, (_, i) => (i - 90) * SPACING_M);
    const all = positions.map((at) => spiralled(6)(at / SPACING_M));
    const gaps = segmentLine(
      positions,
      all.map((value, i) => (i % 7 === 3 ? NaN : value)),
      U,
    );
    expect(gaps?.parts.map(({ kind }) => kind)).toEqual(['tangent', 'transition', 'curve']);
    expect(gaps?.parts.reduce((sum, { used }) => sum + used, 0)).toBe(
      all.filter((_, i) => i % 7 !== 3).length,
    );
    expect(segmentLine(positions.slice(0, 5), all.slice(0, 5), U)).toBeNull();
    expect(segmentLine([1, 1, 1, 1, 1, 1], [0, 0, 0, 0, 0, 0], U)).toBeNull();
  });

  it(
    'finds the same parts with the datum shifted and the sheet turned round',
    () => {
      fc.assert(
        fc.property(
          fc.integer({ min: 1, max: 12 }),
          fc.integer({ min: -3000, max: 3000 }),
          fc.integer({ min: 1, max: 200 }),
          (degrees, datumM, seed) => {
            const noise = normalDraws('either way', seed, 91);
            const steps = Array.from({ length: 91 }, (_, i) => i - 90);
            const values = steps.map((step, i) => spiralled(degrees)(step) + (U / 2) * (noise[i] ?? 0));
            const there = segmentLine(
              steps.map((step) => step * SPACING_M + datumM),
              values,
              U,
            );
            const back = segmentLine(
              steps.map((step) => -step * SPACING_M).reverse(),
              [...values].reverse(),
              U,
            );
            const forward = there?.parts.map(({ kind }) => kind);
            expect(back?.parts.map(({ kind }) => kind).reverse()).toEqual(forward);
            there?.parts.forEach(({ fromM, curvaturePerM }, i) => {
              const mirrored = back?.parts.at(-1 - i);
              expect(Math.abs((mirrored?.toM ?? NaN) + fromM - datumM)).toBeLessThan(SPACING_M);
              expect(Math.abs((mirrored?.curvaturePerM ?? NaN) - curvaturePerM)).toBeLessThan(U / 10);
            });
          },
        ),
        { seed: 41, numRuns: 20 },
      );
    },
    TIMEOUT_MS,
  );
});
