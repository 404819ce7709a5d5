import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  PIN_TO_FACE_M,
  couplerAngles,
  offsetAlong,
  truckLateralsKn,
  type CurveAlong,
} from '~/lib/mechanics/coupler-angle';
import { netForceKn, steadyCouplerForces, type VehicleInTrain } from '~/lib/mechanics/coupler-force';
import { couplerLateralKn, couplerSwingLateralKn } from '~/lib/mechanics/coupler-lateral';
import { dynamicBrakeKn, notchShare, tractiveEffortKn } from '~/lib/mechanics/locomotive-force';
import { unloadedShare } from '~/lib/mechanics/stringline';
import { brakeForceKn, cylinderPressureKpa, FULL_SERVICE_KPA } from '~/lib/mechanics/train-brake';

const vehicle = (changes: Partial<VehicleInTrain> = {}): VehicleInTrain => ({
  massKg: 100_000,
  axles: 4,
  grade: 0,
  curvaturePerM: 0,
  dragFactor: 0.07,
  tractionKn: 0,
  brakeKn: 0,
  ...changes,
});
const FREE = { rolling: 0, curve: 0 };

describe('steadyCouplerForces', () => {
  it('shares the pull by the mass behind each coupler when nothing resists', () => {
    const train = [vehicle({ tractionKn: 300 }), vehicle(), vehicle({ massKg: 50_000 }), vehicle()];
    const { couplersKn, accelerationMs2 } = steadyCouplerForces(train, 10, FREE);
    expect(accelerationMs2).toBeCloseTo(300 / 350, 12);
    [250, 150, 100].forEach((behind, i) => expect(couplersKn[i]).toBeCloseTo((300 * behind) / 350, 9));
  });

  it('is buff throughout under dynamic brake at the head, and symmetrical with power at the rear', () => {
    const cars = [vehicle(), vehicle(), vehicle()];
    const held = steadyCouplerForces([vehicle({ tractionKn: -200 }), ...cars], 10);
    expect(held.couplersKn.every((force) => force < 0)).toBe(true);
    const pulled = steadyCouplerForces([vehicle({ tractionKn: 200 }), ...cars], 10, FREE);
    const pushed = steadyCouplerForces([...cars, vehicle({ tractionKn: 200 })], 10, FREE);
    pulled.couplersKn.forEach((force, i) => expect(pushed.couplersKn[2 - i]).toBeCloseTo(-force, 9));
  });

  it('balances every vehicle for any train', () => {
    const one = fc.record({
      massKg: fc.double({ min: 20_000, max: 200_000, noNaN: true }),
      grade: fc.double({ min: -0.03, max: 0.03, noNaN: true }),
      tractionKn: fc.double({ min: -300, max: 500, noNaN: true }),
      brakeKn: fc.double({ min: 0, max: 60, noNaN: true }),
      curvaturePerM: fc.double({ min: 0, max: 0.008, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(one, { minLength: 2, maxLength: 40 }), (parts) => {
        const train = parts.map((part) => vehicle(part));
        const { couplersKn, accelerationMs2 } = steadyCouplerForces(train, 12);
        return train.every((each, i) => {
          const pull = netForceKn(each, 12) - (couplersKn[i] ?? 0) + (couplersKn[i - 1] ?? 0);
          return Math.abs(pull * 1000 - each.massKg * accelerationMs2) < 1e-3;
        });
      }),
      { seed: 5, numRuns: 200 },
    );
  });
});

const car = (lengthM: number, truckCentresM: number) => ({ lengthM, truckCentresM });
const R = 200;

const uniform = (curvaturePerM: number): CurveAlong => ({
  m: [-200, 200],
  curvaturePerM: [curvaturePerM, curvaturePerM],
});

describe('offsetAlong', () => {
  it('is κ·s²/2 on a curve, κ′·s³/6 on a spiral, and the tangent’s own beyond its end', () => {
    expect(offsetAlong(uniform(1 / R), 0, 30)).toBeCloseTo(900 / (2 * R), 12);
    expect(offsetAlong(uniform(1 / R), 0, -30)).toBeCloseTo(900 / (2 * R), 12);
    const spiral = { m: [0, 100], curvaturePerM: [0, 1 / R] };
    expect(offsetAlong(spiral, 0, 60)).toBeCloseTo(60 ** 3 / (6 * 100 * R), 12);
    const ended = { m: [0, 50, 50], curvaturePerM: [1 / R, 1 / R, 0] };
    // Beyond the end of the curve the track runs on straight: slope 50/R from the offset there.
    expect(offsetAlong(ended, 0, 80)).toBeCloseTo(50 ** 2 / (2 * R) + (30 * 50) / R, 12);
  });
});

describe('couplerAngles', () => {
  it('is S/(2R) for cars alike, and nothing on tangent', () => {
    const [rear, front] = couplerAngles(car(18, 14), car(18, 14), uniform(1 / R), 5);
    expect(rear).toBeCloseTo(18 / (2 * R), 12);
    expect(front).toBeCloseTo(rear, 12);
    expect(couplerAngles(car(27, 19), car(12, 8), uniform(0), 0)).toEqual([0, 0]);
  });

  it('agrees with the bodies laid out in the plane, on a sharp curve and without small angles', () => {
    const [ahead, behind] = [car(27, 19), car(13, 8)];
    const [rear, front] = couplerAngles(ahead, behind, uniform(1 / R), 0);
    // Curve centre at the origin; the car ahead lies along x with its middle on the y axis.
    const pinOf = ({ lengthM, truckCentresM }: typeof ahead) => ({
      n: lengthM / 2 - PIN_TO_FACE_M,
      m: Math.sqrt(R * R - (truckCentresM / 2) ** 2),
    });
    const [a, b] = [pinOf(ahead), pinOf(behind)];
    const pinA = { x: -a.n, y: a.m };
    // The car behind, turned round the centre by t: found by bisection on the length of the bar.
    const pinB = (t: number) => {
      const along = { x: Math.cos(t), y: Math.sin(t) };
      const middle = { x: -b.m * Math.sin(t), y: b.m * Math.cos(t) };
      return { x: middle.x + b.n * along.x, y: middle.y + b.n * along.y, along };
    };
    let [low, high] = [0, 0.5];
    for (let i = 0; i < 80; i += 1) {
      const t = (low + high) / 2;
      const p = pinB(t);
      const gap = Math.hypot(p.x - pinA.x, p.y - pinA.y);
      if (p.x > pinA.x || gap < 2 * PIN_TO_FACE_M) low = t;
      else high = t;
    }
    const p = pinB(low);
    const bar = { x: p.x - pinA.x, y: p.y - pinA.y };
    const angle = (u: { x: number; y: number }, v: { x: number; y: number }): number =>
      Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y);
    expect(Math.abs(angle({ x: -1, y: 0 }, bar) / rear - 1)).toBeLessThan(0.02);
    expect(
      Math.abs(-angle({ x: p.along.x, y: p.along.y }, { x: -bar.x, y: -bar.y }) / front - 1),
    ).toBeLessThan(0.02);
    expect(rear).toBeGreaterThan(front);
  });

  it('turns the coupler opposite ways where one curve meets its reverse, by what the bodies lie askew', () => {
    const shape = car(18, 14);
    const reverse = { m: [-200, 0, 0, 200], curvaturePerM: [-1 / R, -1 / R, 1 / R, 1 / R] };
    const [rear, front] = couplerAngles(shape, shape, reverse, 0);
    const n = 9 - PIN_TO_FACE_M;
    // Each body has slope 9/R at its middle, offset (9² + 7²)/2R; its pin lies n back along it.
    const pin = (9 ** 2 + 7 ** 2) / (2 * R) - (n * 9) / R;
    expect(rear).toBeCloseTo(9 / R - (2 * pin) / (2 * PIN_TO_FACE_M), 12);
    expect(front).toBeCloseTo(-rear, 12);
    // Mirrored, every angle changes sign.
    const mirrored = { ...reverse, curvaturePerM: reverse.curvaturePerM.map((each) => -each) };
    expect(couplerAngles(shape, shape, mirrored, 0)[0]).toBeCloseTo(-rear, 12);
  });

  it('takes the end of a car thrown out where a curve begins without a spiral', () => {
    const shape = car(18, 14);
    const entry = { m: [-200, 0, 0, 200], curvaturePerM: [0, 0, 1 / R, 1 / R] };
    const [rear, front] = couplerAngles(shape, shape, entry, 0);
    // Only the car ahead lies on the curve; its pin stands off the line of the one behind.
    const pin = (9 ** 2 + 7 ** 2) / (2 * R) - ((9 - PIN_TO_FACE_M) * 9) / R;
    expect(front).toBeCloseTo(pin / (2 * PIN_TO_FACE_M), 12);
    expect(rear).toBeCloseTo(9 / R - pin / (2 * PIN_TO_FACE_M), 12);
  });
});

describe('truckLateralsKn', () => {
  it('gives each truck F·S/(2R) between neighbours alike', () => {
    const shape = car(18, 14);
    const [rear, front] = couplerAngles(shape, shape, uniform(1 / R), 0);
    const [lead, trail] = truckLateralsKn(
      shape,
      { forceKn: 400, angleRad: front },
      { forceKn: 400, angleRad: rear },
    );
    expect(lead).toBeCloseTo(couplerLateralKn(400, 18, 1 / R), 1);
    expect(trail).toBeCloseTo(lead, 9);
  });

  it('gives F·sin α·(pin to pin)/(truck centres) when the ends swing opposite ways', () => {
    const shape = car(18, 12);
    const [lead, trail] = truckLateralsKn(
      shape,
      { forceKn: -500, angleRad: 0.1 },
      { forceKn: -500, angleRad: -0.1 },
    );
    const size = couplerSwingLateralKn(-500, 0.1, 18 - 2 * PIN_TO_FACE_M, 12);
    expect(Math.abs(lead)).toBeCloseTo(size, 9);
    expect(trail).toBeCloseTo(-lead, 9);
  });
});

describe('locomotive and brake forces', () => {
  const rating = { massKg: 180_000, ratedKn: 400, ratedSpeedMs: 5, dynamicBrakeKn: 300 };
  it('follows power over speed up to what the rails hold', () => {
    expect(tractiveEffortKn(rating, { notch: 8, at: 0 }, 10, 0.3)).toBeCloseTo(200, 9);
    expect(tractiveEffortKn(rating, { notch: 8, at: 0 }, 1, 0.3)).toBeCloseTo(0.3 * 180 * 9.80665, 6);
    expect(tractiveEffortKn(rating, { notch: 0, at: 0 }, 10, 0.3)).toBe(0);
    expect([notchShare(4, 0), notchShare(4, 1), notchShare(8, 0.3)]).toEqual([0.25, 0.5, 1]);
  });
  it('fades the dynamic brake at low and at high speed', () => {
    expect(dynamicBrakeKn(300, 1, 8)).toBe(300);
    expect(dynamicBrakeKn(300, 1, 2 * 25 * 0.44704)).toBeCloseTo(150, 9);
    expect(dynamicBrakeKn(300, 0.5, 3 * 0.44704)).toBeCloseTo(75, 9);
  });
  it('fills cylinders with two and a half times the reduction, and not before it is felt', () => {
    expect(cylinderPressureKpa(20, false)).toBe(0);
    expect(cylinderPressureKpa(100, false)).toBe(250);
    expect(cylinderPressureKpa(600, false)).toBe(FULL_SERVICE_KPA);
    expect(brakeForceKn(100_000, 0.1, 0.3, FULL_SERVICE_KPA)).toBeCloseTo(29.42, 2);
  });
});

describe('unloadedShare', () => {
  it('is one when the moment of the couplers equals that of the weight on half the spacing', () => {
    // T·h_c = W·s/2.
    expect(unloadedShare((500 * 762) / 864, 864, 0, 2000, 500)).toBeCloseTo(1, 12);
    expect(unloadedShare(0, 864, 101.6, 2032, 500)).toBeCloseTo(0.178, 3);
  });
});
