import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  curvatureFromMidOrdinate,
  curvatureOfDegrees,
  midOrdinateFromCurvature,
} from '~/lib/track/curvature';
import { deviationsFromUniform, spreadOver, UNIFORM_STATIONS } from '~/lib/track/deviation';

type Point = readonly [number, number];

/** Chords in use, m: 31 ft, 62 ft, 100 ft, 10 m and 20 m. */
const CHORDS_M = [9.4488, 18.8976, 30.48, 10, 20];

/** Distance (mm) from the middle of the chord between two points to the curve, square to the chord. */
function offsetMm(from: Point, to: Point, at: Point): number {
  const [ux, uy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(ux, uy);
  return (Math.abs(ux * (at[1] - from[1]) - uy * (at[0] - from[0])) / length) * 1000;
}

/** A point of a clothoid κ = a·s, by Simpson's rule on its tangent angle a·s²/2 (Cornu's spiral). */
function clothoid(a: number, s: number): Point {
  const n = 2000;
  const h = s / n;
  let x = 0;
  let y = 0;
  for (let i = 0; i <= n; i += 1) {
    const angle = (a * (i * h) ** 2) / 2;
    const weight = i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2;
    x += weight * Math.cos(angle);
    y += weight * Math.sin(angle);
  }
  return [(x * h) / 3, (y * h) / 3];
}

/** Place of the curve across from the middle of the chord: where its projection onto it is half. */
function acrossTheMiddle(a: number, from: number, to: number): number {
  const [p, q] = [clothoid(a, from), clothoid(a, to)];
  const along = (s: number): number => {
    const [x, y] = clothoid(a, s);
    return (
      ((x - p[0]) * (q[0] - p[0]) + (y - p[1]) * (q[1] - p[1])) / Math.hypot(q[0] - p[0], q[1] - p[1]) ** 2
    );
  };
  let [low, high] = [from, to];
  for (let i = 0; i < 50; i += 1) {
    const middle = (low + high) / 2;
    if (along(middle) < 0.5) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

describe('mid-ordinate of a chord on a circle (Euclid, Elements III.35)', () => {
  it('gives the curvature of the circle for any chord, to 1e-6', () => {
    for (const chordM of CHORDS_M) {
      for (const degrees of [0.25, 1, 6, 12, 20]) {
        const radiusM = 1 / curvatureOfDegrees(degrees);
        const half = Math.asin(chordM / 2 / radiusM);
        const on = (angle: number): Point => [radiusM * Math.sin(angle), radiusM * Math.cos(angle)];
        const measured = offsetMm(on(-half), on(half), on(0));
        expect(midOrdinateFromCurvature(1 / radiusM, chordM) / measured - 1).toBeCloseTo(0, 6);
        expect(Math.abs(curvatureFromMidOrdinate(measured, chordM) * radiusM - 1)).toBeLessThan(1e-6);
      }
    }
  });
});

describe('mid-ordinate of any chord on a circle (Euclid, Elements III.35)', () => {
  it('gives the curvature of the circle to 1e-6 of it, of either hand', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 3, max: 100, noNaN: true }),
        fc.double({ min: 60, max: 20_000, noNaN: true }),
        fc.boolean(),
        (chordM, radiusM, right) => {
          const half = Math.asin(chordM / 2 / radiusM);
          const on = (angle: number): Point => [radiusM * Math.sin(angle), radiusM * Math.cos(angle)];
          const read = (right ? -1 : 1) * offsetMm(on(-half), on(half), on(0));
          const found = curvatureFromMidOrdinate(read, chordM) * radiusM * (right ? -1 : 1);
          expect(Math.abs(found - 1)).toBeLessThan(1e-6);
        },
      ),
      { seed: 62, numRuns: 300 },
    );
  });
});

describe('mid-ordinate of a chord on a clothoid (Cornu)', () => {
  // Six degrees reached in 300 ft: a sharp spiral of a freight line.
  const a = curvatureOfDegrees(6) / 91.44;

  it('gives the curvature across from the middle of the chord, to 1e-6 per metre', () => {
    for (const chordM of CHORDS_M) {
      for (const middleM of [20, 45, 70]) {
        // Ends of the chord, by its straight length and not along the rail.
        let half = chordM / 2;
        for (let i = 0; i < 40; i += 1) {
          const [p, q] = [clothoid(a, middleM - half), clothoid(a, middleM + half)];
          half *= chordM / Math.hypot(q[0] - p[0], q[1] - p[1]);
        }
        const at = acrossTheMiddle(a, middleM - half, middleM + half);
        const measured = offsetMm(clothoid(a, middleM - half), clothoid(a, middleM + half), clothoid(a, at));
        expect(Math.abs(curvatureFromMidOrdinate(measured, chordM) - a * at)).toBeLessThan(1e-6);
      }
    }
  });

  it('is uniform: nine points a quarter of the chord apart leave less than 1e-6 of the curvature', () => {
    const chordM = 18.8976;
    const offsets = Array.from({ length: 15 }, (_, i) => {
      const middle = 30 + (i - 7) * 2;
      return midOrdinateFromCurvature(a * middle, chordM);
    });
    const at = deviationsFromUniform(offsets)[7];
    expect(Math.abs(curvatureFromMidOrdinate(at?.deviation ?? NaN, chordM))).toBeLessThan(1e-6);
  });
});

describe('resampling where stations do not stand a quarter of the chord apart', () => {
  const CHORD_M = 18.8976;
  const quarter = CHORD_M / 4;
  const a = curvatureOfDegrees(6) / 91.44;
  const circle = (s: number): Point => [160 * Math.sin(s / 160), 160 * Math.cos(s / 160)];
  const spiral = (s: number): Point => clothoid(a, s);

  /** Offset of the chord across from `s`, read off the curve itself. */
  function readAt(curve: (s: number) => Point, s: number): number {
    let half = CHORD_M / 2;
    for (let i = 0; i < 20; i += 1) {
      const [p, q] = [curve(s - half), curve(s + half)];
      half *= CHORD_M / Math.hypot(q[0] - p[0], q[1] - p[1]);
    }
    return offsetMm(curve(s - half), curve(s + half), curve(s));
  }

  it.each([
    ['every 10 ft', 3.048],
    ['every 5 m', 5],
    ['every 13 ft', 3.9624],
  ])('finds a circle and a clothoid uniform to 1e-6 per metre, stations %s', (_, spacingM) => {
    const positions = Array.from({ length: 24 }, (_each, i) => 14 + i * spacingM);
    for (const curve of [circle, spiral]) {
      const found = deviationsFromUniform(
        positions.map((s) => readAt(curve, s)),
        UNIFORM_STATIONS,
        spreadOver(Float64Array.from(positions), quarter),
      );
      const middle = found.slice(8, 16);
      expect(middle.every((each) => each?.used === UNIFORM_STATIONS && each.resampled)).toBe(true);
      for (const each of middle)
        expect(Math.abs(curvatureFromMidOrdinate(each?.deviation ?? NaN, CHORD_M))).toBeLessThan(1e-6);
    }
  });

  it('still finds a swing of 20 mm at one station, less the ninth of it that is in the average', () => {
    const positions = Array.from({ length: 24 }, (_each, i) => 14 + i * 5);
    const offsets = positions.map((s, i) => readAt(circle, s) + (i === 12 ? 20 : 0));
    const found = deviationsFromUniform(
      offsets,
      UNIFORM_STATIONS,
      spreadOver(Float64Array.from(positions), quarter),
    );
    // The points beside it stand 0.2756 m inside the next stations and take that share of the swing.
    const beside = 2 * (1 - quarter / 5);
    expect(found[12]?.deviation).toBeCloseTo(20 * (1 - (1 + beside) / 9), 2);
  });
});

describe('chord offsets of one line: the offset of a chord twice as long is the weighted sum of three', () => {
  it('m₂(x) = m(x − c/2) + 2·m(x) + m(x + c/2), on a circle to 1e-6 of the curvature', () => {
    // Follows from m(x) = y(x) − ½·(y(x − c/2) + y(x + c/2)); a flat circle is its own offset line.
    const curvature = curvatureOfDegrees(1);
    const y = (x: number): number => Math.sqrt((1 / curvature) ** 2 - x * x) * 1000;
    const m = (x: number, chord: number): number => y(x) - (y(x - chord / 2) + y(x + chord / 2)) / 2;
    const chord = 9.4488;
    const long = m(0, 2 * chord);
    expect(m(-chord / 2, chord) + 2 * m(0, chord) + m(chord / 2, chord)).toBeCloseTo(long, 6);
    expect(Math.abs(curvatureFromMidOrdinate(long, 2 * chord) / curvature - 1)).toBeLessThan(1e-6);
  });
});
