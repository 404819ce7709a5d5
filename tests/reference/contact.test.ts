import { describe, expect, it } from 'vitest';
import { conicityCurve, equivalentConicity, equivalentConicityOf } from '~/lib/contact/conicity';
import { contactSweep, shiftsBetween } from '~/lib/contact/sweep';
import { outlineOf } from '~/lib/outline/outline';
import { cone, lineOf, pair, shapeOutline, standing, stateAt } from '~/tests/contact/standing';

const RAILS = ['60e1', '54e1', '136re', '115re'];

describe('a cone (Klingel, 1883)', () => {
  it.each(RAILS)('gives its own tangent on %s at every amplitude, the roll neglected', (rail) => {
    const setup = standing(pair(cone(1 / 20), shapeOutline(rail, 0.3), { cantLeftRad: 0.025 }));
    for (const { conicity } of conicityCurve(setup)) {
      expect(conicity.ok && conicity.value).toBeCloseTo(1 / 20, 5);
    }
  });

  it('keeps its contact angle against the axle', () => {
    const setup = standing(pair(cone(1 / 20), shapeOutline('60e1', 0.3)));
    const state = stateAt(setup, 2);
    expect(state.right.points[0].contactAngleRad).toBeCloseTo(Math.atan(1 / 20) + state.rollRad, 6);
    expect(state.left.points[0].contactAngleRad).toBeCloseTo(Math.atan(1 / 20) - state.rollRad, 6);
  });
});

/**
 * Circle on circle, to first order in the shift: Wickens, Fundamentals of Rail Vehicle Dynamics (2003),
 * ch. 2, from memory: λ = (γ·Rw/(Rw − Rr))·(l + Rr·γ)/(l − h·γ) with Rw, Rr the radii of wheel and rail,
 * γ the contact angle in the middle, l half the distance between the contacts, and h the height above the
 * contact of the point whose shift is counted; here that point is at tread level, h = 0.
 */
describe('round rail under a wheel', () => {
  /** Crown of one radius with a face straight down where the gauge is measured. */
  const roundRail = (radiusMm: number) => {
    const crown = lineOf(-36, 36, 0.25, (x) => Math.sqrt(radiusMm ** 2 - x * x) - radiusMm);
    const down = [-30, -20, -10].map((y) => [-36 - (crown.yMm[0]! - y) * 0.01, y] as const);
    return outlineOf([...down.map(([x]) => x), ...crown.xMm], [...down.map(([, y]) => y), ...crown.yMm]);
  };
  const conicityAtRest = (wheel: ReturnType<typeof cone>, radiusMm: number): number => {
    const setup = standing(pair(wheel, roundRail(radiusMm)));
    return stateAt(setup, 0.5).radiusDifferenceMm - stateAt(setup, -0.5).radiusDifferenceMm;
  };
  const halfBase = (wheel: ReturnType<typeof cone>, radiusMm: number): number =>
    stateAt(standing(pair(wheel, roundRail(radiusMm))), 0).right.points[0].at.xMm;

  it.each([200, 300])('a cone on a crown of %d mm, the roll solved', (radiusMm) => {
    const gamma = 1 / 20;
    const expected = gamma * (1 + (radiusMm * gamma) / halfBase(cone(gamma), radiusMm));
    expect(conicityAtRest(cone(gamma), radiusMm) / 2).toBeCloseTo(expected, 4);
  });

  it.each([
    [400, 200],
    [600, 300],
    [500, 80],
  ])('a hollow of %d mm on a crown of %d mm', (wheelMm, railMm) => {
    const gamma = 1 / 20;
    // The hollow's lowest place is chosen so that its direction where it meets the crown is γ.
    const contactU = 1435 / 2 + 36 - railMm * Math.sin(Math.atan(gamma)) - 1360 / 2;
    const middle = contactU + wheelMm * Math.sin(Math.atan(gamma));
    const level = Math.sqrt(wheelMm ** 2 - (contactU - middle) ** 2);
    const hollow = lineOf(20, 130, 0.25, (x) => level - Math.sqrt(wheelMm ** 2 - (x - middle) ** 2));
    const state = stateAt(standing(pair(hollow, roundRail(railMm))), 0);
    const angle = state.right.points[0].contactAngleRad;
    const l = state.right.points[0].at.xMm;
    const expected = ((angle * wheelMm) / (wheelMm - railMm)) * ((l + railMm * angle) / l);
    expect(Math.abs(conicityAtRest(hollow, railMm) / 2 / expected - 1)).toBeLessThan(0.005);
  });
});

describe('equivalent conicity by integration', () => {
  it('is half the slope of a straight radius difference', () => {
    const y = shiftsBetween(-8, 8, 0.1);
    const conicity = equivalentConicityOf({ shiftMm: y, differenceMm: y.map((at) => 0.36 * at) }, 3);
    expect(conicity.ok && conicity.value).toBeCloseTo(0.18, 6);
  });

  // Duffing's oscillator y″ = −b·y³ has the period 7.4163/(√b·A) (complete elliptic integral K(1/√2) = 1.854075).
  it('follows a cubic radius difference', () => {
    const y = shiftsBetween(-8, 8, 0.01);
    const b = 0.02;
    const amplitude = 4;
    const conicity = equivalentConicityOf(
      { shiftMm: y, differenceMm: y.map((at) => b * at ** 3) },
      amplitude,
    );
    const wave = (4 * 1.854074677) / (Math.sqrt(b) * amplitude);
    expect(conicity.ok && conicity.value / ((2 * Math.PI ** 2) / wave ** 2)).toBeCloseTo(1, 4);
  });
});

/**
 * S1002 (EN 13715) on 60E1, gauge 1435 mm, back-to-back 1360 mm, amplitude 3 mm. No published table could
 * be had freely; the values widely quoted for this pair of new shapes are 0.17 to 0.18 at 1:40 and about
 * 0.01 at 1:20 (from memory). Found here: 0.174 and 0.0095; the differences are within what is quoted.
 */
describe('S1002 on 60E1', () => {
  const at = (cantRad: number) =>
    standing(
      pair(shapeOutline('s1002', 0.3), shapeOutline('60e1', 0.3), {
        cantLeftRad: cantRad,
        cantRightRad: cantRad,
      }),
    );

  it('at 1:40', () => {
    const [three] = conicityCurve(at(1 / 40), [3]);
    expect(three?.conicity.ok && three.conicity.value).toBeGreaterThan(0.17);
    expect(three?.conicity.ok && three.conicity.value).toBeLessThan(0.18);
  });

  it('at 1:20', () => {
    const [three] = conicityCurve(at(1 / 20), [3]);
    expect(three?.conicity.ok && three.conicity.value).toBeGreaterThan(0.005);
    expect(three?.conicity.ok && three.conicity.value).toBeLessThan(0.015);
  });

  it('differs by less than 0.005 between roll solved and roll neglected', () => {
    const setup = at(1 / 40);
    const shifts = shiftsBetween(-8, 8, 0.1);
    const solved = equivalentConicity(contactSweep(setup, shifts));
    const neglected = equivalentConicity(contactSweep(setup, shifts, { roll: 'neglected' }));
    expect(solved.ok && neglected.ok && Math.abs(solved.value - neglected.value)).toBeLessThan(0.005);
  });
});
