import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flangeClearance } from '~/lib/contact/clearance';
import { conicityCurve } from '~/lib/contact/conicity';
import { flangeContactAngle } from '~/lib/contact/flange-angle';
import { headPart } from '~/lib/contact/head-part';
import { likelySweep, loadedPart } from '~/lib/contact/loaded-part';
import { placedOutlines } from '~/lib/contact/placed';
import { contactSetup } from '~/lib/contact/setup';
import { contactAt } from '~/lib/contact/state';
import { contactSweep, liftBetween, shiftsBetween } from '~/lib/contact/sweep';
import { heightAt } from '~/lib/outline/at';
import { outlineOf } from '~/lib/outline/outline';
import { cone, pair, shapeOutline, standing, stateAt } from './standing';

const wheel = shapeOutline('s1002', 0.3);
const rail = shapeOutline('60e1', 0.3);
const canted = { cantLeftRad: 1 / 40, cantRightRad: 1 / 40 };

const said = (input: Parameters<typeof contactSetup>[0]): string => {
  const setup = contactSetup(input);
  return setup.ok ? '' : setup.message;
};

describe('a wheelset on its rails', () => {
  it('has an odd radius difference when both sides are alike', () => {
    const setup = standing(pair(wheel, rail, canted));
    for (const shiftMm of [0.7, 2.3, 4.1, 6.9, 9.4]) {
      const [there, back] = [stateAt(setup, shiftMm), stateAt(setup, -shiftMm)];
      expect(there.radiusDifferenceMm).toBeCloseTo(-back.radiusDifferenceMm, 6);
      expect(there.rollRad).toBeCloseTo(-back.rollRad, 9);
      expect(there.right.points[0].onRail.xMm).toBeCloseTo(back.left.points[0].onRail.xMm, 4);
    }
  });

  it('turns round with left and right exchanged', () => {
    const other = { wheel: shapeOutline('freight-narrow', 0.3), rail: shapeOutline('136re', 0.3) };
    const own = { wheel, rail };
    const input = pair(wheel, rail);
    const one = standing({ ...input, left: own, right: other, cantLeftRad: 0.03, cantRightRad: 0.01 });
    const turned = standing({ ...input, left: other, right: own, cantLeftRad: 0.01, cantRightRad: 0.03 });
    for (const shiftMm of [-6, -1.3, 3.7]) {
      const [a, b] = [stateAt(one, shiftMm), stateAt(turned, -shiftMm)];
      expect(a.radiusDifferenceMm).toBeCloseTo(-b.radiusDifferenceMm, 6);
      expect(a.heightMm).toBeCloseTo(b.heightMm, 6);
    }
  });

  it('does not mind where up is 0 in the frame of the rail, nor a section turned against its cant', () => {
    const [cos, sin] = [Math.cos(0.01), Math.sin(0.01)];
    const turned = outlineOf(
      rail.xMm.map((x, i) => x * cos - rail.yMm[i]! * sin),
      rail.yMm.map((y, i) => rail.xMm[i]! * sin + y * cos + 5),
    );
    const plain = stateAt(standing(pair(wheel, rail, canted)), 2);
    const other = stateAt(
      standing(pair(wheel, turned, { cantLeftRad: 1 / 40 - 0.01, cantRightRad: 1 / 40 - 0.01 })),
      2,
    );
    expect(other.heightMm).toBeCloseTo(plain.heightMm, 3);
    expect(Math.abs(other.radiusDifferenceMm - plain.radiusDifferenceMm)).toBeLessThan(0.01);
  });

  it('takes the difference of the wheels’ own radii into the radius difference', () => {
    const input = pair(cone(0.05), rail);
    const setup = standing({ ...input, right: { ...input.right, rollingRadiusMm: 461 } });
    expect(stateAt(setup, 0, { roll: 'neglected' }).radiusDifferenceMm).toBeCloseTo(1, 4);
    // The larger right wheel lifts its end of the axle by the same millimetre.
    expect(stateAt(setup, 0).rollRad * 2 * stateAt(setup, 0).right.points[0].at.xMm).toBeCloseTo(1, 2);
  });

  it('touches at two places where the tread and the throat bear together', () => {
    const setup = standing(pair(wheel, rail, canted));
    const two = contactSweep(setup, shiftsBetween(4, 6, 0.05)).states.filter(
      ({ right }) => right.points.length === 2,
    );
    expect(two.length).toBeGreaterThan(0);
    for (const { right } of two) {
      expect(right.points[0].gapMm).toBe(0);
      expect(right.points[1]!.gapMm).toBeLessThanOrEqual(0.05);
    }
  });

  it('draws wheels that rest on their rails and enter them nowhere', () => {
    const setup = standing(pair(wheel, rail, canted));
    for (const shiftMm of [-8, 0, 3.3]) {
      const drawn = placedOutlines(setup, stateAt(setup, shiftMm));
      for (const side of [drawn.left, drawn.right]) {
        let least = Infinity;
        for (let i = 0; i < side.wheel.xMm.length; i += 1) {
          const top = heightAt(side.rail, side.wheel.xMm[i]!);
          if (top !== null) least = Math.min(least, side.wheel.yMm[i]! - top);
        }
        expect(Math.abs(least)).toBeLessThan(0.03);
      }
    }
  });

  it('lifts the wheel whose flange climbs, and only that one', () => {
    const setup = standing(pair(wheel, rail, canted));
    const lift = liftBetween(stateAt(setup, 0), stateAt(setup, 8));
    expect(lift.right).toBeGreaterThan(3);
    expect(Math.abs(lift.left)).toBeLessThan(0.5);
  });
});

describe('flange contact', () => {
  it('lies between the plain clearance at 10 mm above the tread and two millimetres more', () => {
    const clearance = flangeClearance(standing(pair(wheel, rail, canted)));
    // (1435 − 1360 − 2·32.5)/2 = 5 mm; the throat is thinner than the flange is there, the gauge corner round.
    expect(clearance.ok && clearance.value.rightMm).toBeGreaterThan(5);
    expect(clearance.ok && clearance.value.rightMm).toBeLessThan(7);
  });

  it('grows by half of what the gauge grows', () => {
    const near = flangeClearance(standing(pair(wheel, rail, canted)));
    const wide = flangeClearance(standing(pair(wheel, rail, { ...canted, gaugeMm: 1445 })));
    expect(near.ok && wide.ok && wide.value.leftMm - near.value.leftMm).toBeCloseTo(5, 2);
  });

  it('has the flange’s own angle on a new rail and the gauge face’s on a worn one', () => {
    const fresh = flangeContactAngle(standing(pair(wheel, rail, canted)), 'right');
    expect(fresh.ok && (fresh.value.steepestRad * 180) / Math.PI).toBeCloseTo(70, 0);
    // A gauge face worn to 60°, rounded with 10 mm into the crown.
    const face = Array.from({ length: 81 }, (_, i) => 20 - i * 0.25);
    const corner = Array.from({ length: 41 }, (_, i) => ((150 - 1.5 * i) * Math.PI) / 180).slice(1);
    const crown = Array.from({ length: 47 }, (_, i) => i + 1);
    const faceEnd = -15 + 10 * Math.cos((150 * Math.PI) / 180);
    const worn = outlineOf(
      [
        ...face.map((t) => faceEnd - t / 2),
        ...corner.map((a) => -15 + 10 * Math.cos(a)),
        ...crown.map((x) => x - 15),
      ],
      [
        ...face.map((t) => -5 - (t * Math.sqrt(3)) / 2),
        ...corner.map((a) => -10 + 10 * Math.sin(a)),
        ...crown.map((x) => (-x * x) / 800),
      ],
    );
    const shallow = flangeContactAngle(standing(pair(wheel, worn)), 'right');
    expect(shallow.ok && (shallow.value.steepestRad * 180) / Math.PI).toBeCloseTo(60, 0);
  });
});

describe('loaded part of the head', () => {
  it('has its borders at the stated shares', () => {
    expect([-35, -34, -19, -17, 17, 19].map((x) => headPart(x, 36))).toEqual([
      'gaugeFace',
      'gaugeCorner',
      'gaugeCorner',
      'crown',
      'crown',
      'fieldSide',
    ]);
  });

  it('moves to the field side when a false flange carries the wheel', () => {
    const hollow = outlineOf(
      wheel.xMm,
      wheel.yMm.map((y, i) => y - (wheel.xMm[i]! > 45 && wheel.xMm[i]! < 98 ? 3 : 0)),
    );
    const share = (shape: typeof wheel): number => {
      const sweep = likelySweep(standing(pair(shape, rail, canted)));
      const part = sweep.ok ? loadedPart(sweep.value, 'right') : sweep;
      return part.ok ? part.value.shares.fieldSide : NaN;
    };
    expect(share(wheel)).toBe(0);
    expect(share(hollow)).toBeGreaterThan(0.3);
  });
});

describe('what cannot stand', () => {
  it('is refused with what to check', () => {
    const input = pair(wheel, rail);
    expect(said({ ...input, backToBackMm: 1440 })).toMatch(/not less than the gauge/);
    expect(said({ ...input, gaugeMm: 1700 })).toMatch(/drop between the rails/);
    expect(said({ ...input, gaugeMm: NaN })).toMatch(/Enter the gauge/);
    expect(said({ ...input, cantLeftRad: 2 })).toMatch(/cant/);
    expect(said({ ...input, rollingRadiusMm: -1 })).toMatch(/rolling radius/);
    const flat = outlineOf([-30, -20, -10, 0, 5, 10, 20, 30], [-1, -0.5, -0.1, 0, 0, -0.1, -0.5, -1]);
    expect(said(pair(wheel, flat))).toMatch(/does not reach down its gauge face/);
    const few = outlineOf([0, 1], [0, 1]);
    expect(said(pair(few, rail))).toMatch(/left wheel: .*points/);
    const dropped = contactAt(standing(input), 120);
    expect(dropped.ok ? '' : dropped.message).toMatch(/not over its rail/);
    const tight = flangeClearance(standing(pair(wheel, rail, { backToBackMm: 1400 })));
    expect(tight.ok ? '' : tight.message).toMatch(/no clearance/);
  });

  it('is never an exception, whatever the outlines', () => {
    const coordinate = fc.double({ min: -80, max: 140, noNaN: false });
    const line = fc.array(fc.tuple(coordinate, coordinate), { maxLength: 40 }).map((points) =>
      outlineOf(
        points.map(([x]) => x),
        points.map(([, y]) => y),
      ),
    );
    const graph = fc
      .array(fc.double({ min: -20, max: 30, noNaN: true }), { minLength: 8, maxLength: 60 })
      .map((ys) =>
        outlineOf(
          ys.map((_, i) => -40 + (i * 180) / ys.length),
          ys,
        ),
      );
    const any = fc.oneof(line, graph, fc.constant(wheel), fc.constant(rail));
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: false });
    fc.assert(
      fc.property(
        any,
        any,
        any,
        any,
        number(1200, 1500),
        number(1300, 1600),
        number(-0.4, 0.4),
        number(-30, 30),
        (lw, lr, rw, rr, backToBackMm, gaugeMm, cantLeftRad, shiftMm) => {
          const setup = contactSetup({
            ...pair(lw, lr, { backToBackMm, gaugeMm, cantLeftRad }),
            right: { wheel: rw, rail: rr },
          });
          if (!setup.ok) {
            expect(setup.message.length).toBeGreaterThan(10);
            return;
          }
          const state = contactAt(setup.value, shiftMm);
          if (state.ok) {
            expect(Number.isFinite(state.value.heightMm)).toBe(true);
            expect(Number.isFinite(state.value.radiusDifferenceMm)).toBe(true);
          }
          conicityCurve(setup.value, [1]);
          flangeClearance(setup.value);
        },
      ),
      { seed: 11, numRuns: 60 },
    );
  });
});
