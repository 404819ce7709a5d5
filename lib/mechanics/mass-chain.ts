import type { Method } from '../findings/finding';
import { FRICTION_SPEED_MS, storedEnergyKj, type DraftGear } from './draft-gear';

/** Masses in a row, joined by draft gears: one gear fewer than masses. */
export type MassChain = {
  readonly massesKg: ArrayLike<number>;
  readonly gears: readonly DraftGear[];
};

/**
 * Writes the outside forces on the masses, kN, forward positive, into `out`. Asked at the beginning of
 * a step and held over this and the next ones, not longer than one and a half of the longest step.
 * `headM`: distance run by the first mass.
 */
export type OutsideForces = (timeS: number, headM: number, speedsMs: Float64Array, out: Float64Array) => void;

export type ChainStart = {
  readonly speedsMs: ArrayLike<number>;
  /** Of every coupling from the middle of its slack, draft positive. */
  readonly extensionsM: ArrayLike<number>;
};

export type ChainOptions = {
  readonly durationS: number;
  /** Coupler forces are noted this often, s. */
  readonly everyS: number;
  /** Outside forces are held no longer than this, s. */
  readonly longestStepS?: number;
  /** Error allowed in one step: speeds in m/s, extensions a tenth of it in m. */
  readonly tolerance?: number;
};

export type EnergyBalance = {
  /** All kJ. Work of the outside forces, positive and negative counted apart by mass and step. */
  readonly workKj: number;
  readonly workThroughputKj: number;
  readonly kineticGainKj: number;
  readonly storedGainKj: number;
  readonly frictionKj: number;
  /** What does not close, over the work that went through. */
  readonly unclosed: number;
};

export type ChainHistory = {
  readonly timesS: Float64Array;
  /** One row per noted time, one column per coupling, kN, draft positive. */
  readonly forcesKn: readonly Float64Array[];
  /** Speed of every mass at each noted time. */
  readonly speedsMs: readonly Float64Array[];
  /** Greatest and least force of each coupling at any step. */
  readonly mostKn: Float64Array;
  readonly leastKn: Float64Array;
  readonly energy: EnergyBalance;
  readonly steps: number;
};

const N_PER_KN = 1000;
const DEFAULT_TOLERANCE = 5e-5;
const DEFAULT_LONGEST_S = 0.05;
const SHORTEST_S = 1e-6;
const MOST_STEPS = 20_000_000;

/**
 * Motion of a chain of masses joined by draft gears: m·v′ = P + F_behind-ahead differences, the
 * coupling’s extension growing with the difference of the speeds. Integrated with the embedded
 * Runge–Kutta pair of orders 3 and 2 and step control; the work of the outside forces and the
 * friction of the gears are integrated with it, so that the energy balance is a check of the whole.
 * Masses > 0; the arrays are not changed.
 * Source: Bogacki and Shampine, Applied Mathematics Letters 2 (1989) 321–325.
 */
export function runChain(
  { massesKg, gears }: MassChain,
  outside: OutsideForces,
  start: ChainStart,
  options: ChainOptions,
): ChainHistory {
  const { durationS, everyS } = options;
  const longest = options.longestStepS ?? DEFAULT_LONGEST_S;
  const tolerance = options.tolerance ?? DEFAULT_TOLERANCE;
  const n = massesKg.length;
  const joints = gears.length;
  // Speeds, extensions, distance of the head, work, friction.
  const size = n + joints + 3;
  const HEAD = n + joints;
  const WORK = HEAD + 1;
  const FRICTION = HEAD + 2;
  const inverse = Float64Array.from(massesKg, (mass) => N_PER_KN / mass);
  const half = Float64Array.from(gears, ({ slackM }) => slackM / 2);
  const travel = Float64Array.from(gears, ({ travelM }) => travelM);
  const closed = Float64Array.from(gears, ({ closedKn }) => closedKn);
  const linear = Float64Array.from(
    gears,
    ({ closedKn, travelM, cubicShare }) => (closedKn * (1 - cubicShare)) / travelM,
  );
  const cubic = Float64Array.from(
    gears,
    ({ closedKn, travelM, cubicShare }) => (closedKn * cubicShare) / travelM ** 3,
  );
  const solid = Float64Array.from(gears, ({ solidKnPerM }) => solidKnPerM);
  const share = Float64Array.from(gears, ({ frictionShare }) => frictionShare);
  const held = new Float64Array(n);
  const force = new Float64Array(joints);
  const smooth = FRICTION_SPEED_MS * FRICTION_SPEED_MS;

  // Written out and not called gear by gear: this runs some twenty million times.
  const slope = (y: Float64Array, dy: Float64Array): void => {
    let friction = 0;
    let work = 0;
    for (let k = 0; k < joints; k += 1) {
      const x = y[n + k]!;
      const rate = y[k]! - y[k + 1]!;
      dy[n + k] = rate;
      const beyond = (x < 0 ? -x : x) - half[k]!;
      if (beyond <= 0) {
        force[k] = 0;
        continue;
      }
      const elastic =
        beyond <= travel[k]!
          ? beyond * (linear[k]! + cubic[k]! * beyond * beyond)
          : closed[k]! + solid[k]! * (beyond - travel[k]!);
      const working = x < 0 ? -rate : rate;
      const rubbing = (elastic * share[k]! * working) / Math.sqrt(working * working + smooth);
      friction += rubbing * working;
      force[k] = x < 0 ? -(elastic + rubbing) : elastic + rubbing;
    }
    for (let i = 0; i < n; i += 1) {
      const ahead = i > 0 ? force[i - 1]! : 0;
      const behind = i < joints ? force[i]! : 0;
      dy[i] = (held[i]! + ahead - behind) * inverse[i]!;
      work += held[i]! * y[i]!;
    }
    dy[HEAD] = y[0]!;
    dy[WORK] = work;
    dy[FRICTION] = friction;
  };

  let y = new Float64Array(size);
  for (let i = 0; i < n; i += 1) y[i] = start.speedsMs[i]!;
  for (let k = 0; k < joints; k += 1) y[n + k] = start.extensionsM[k]!;
  const [k1, k2, k3, k4] = [0, 1, 2, 3].map(() => new Float64Array(size)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const between = new Float64Array(size);
  let next = new Float64Array(size);
  const kinetic = (state: Float64Array): number => {
    let sum = 0;
    for (let i = 0; i < n; i += 1) sum += (massesKg[i]! * state[i]! * state[i]!) / 2 / N_PER_KN;
    return sum;
  };
  const stored = (state: Float64Array): number =>
    gears.reduce((sum, gear, k) => sum + storedEnergyKj(gear, state[n + k]!), 0);
  const startKinetic = kinetic(y);
  const startStored = stored(y);

  const most = new Float64Array(joints).fill(-Infinity);
  const least = new Float64Array(joints).fill(Infinity);
  const timesS: number[] = [];
  const forcesKn: Float64Array[] = [];
  const speedsMs: Float64Array[] = [];
  let throughput = 0;
  let time = 0;
  let step = Math.min(longest, 0.005);
  let noted = 0;
  let steps = 0;
  let asked = -Infinity;
  while (steps < MOST_STEPS) {
    const speeds = y.subarray(0, n);
    if (time >= asked + longest / 2) {
      outside(time, y[HEAD]!, speeds, held);
      asked = time;
      slope(y, k1);
    } else k1.set(k4);
    for (let k = 0; k < joints; k += 1) {
      if (force[k]! > most[k]!) most[k] = force[k]!;
      if (force[k]! < least[k]!) least[k] = force[k]!;
    }
    if (time >= noted * everyS - SHORTEST_S) {
      timesS.push(time);
      forcesKn.push(force.slice());
      speedsMs.push(speeds.slice());
      noted += 1;
    }
    if (time >= durationS - SHORTEST_S) break;
    for (;;) {
      // A step ends where forces are noted, so that nothing has to be read between steps.
      const h = Math.min(step, longest, durationS - time, Math.max(noted * everyS - time, SHORTEST_S));
      for (let j = 0; j < size; j += 1) between[j] = y[j]! + (h / 2) * k1[j]!;
      slope(between, k2);
      for (let j = 0; j < size; j += 1) between[j] = y[j]! + ((3 * h) / 4) * k2[j]!;
      slope(between, k3);
      for (let j = 0; j < size; j += 1)
        next[j] = y[j]! + h * ((2 / 9) * k1[j]! + k2[j]! / 3 + (4 / 9) * k3[j]!);
      slope(next, k4);
      let worst = 0;
      for (let j = 0; j < HEAD; j += 1) {
        const error = Math.abs(h * ((-5 / 72) * k1[j]! + k2[j]! / 12 + k3[j]! / 9 - k4[j]! / 8));
        const scaled = j < n ? error : error * 10;
        if (scaled > worst) worst = scaled;
      }
      const fitting = worst === 0 ? 3 : 0.9 * Math.cbrt(tolerance / worst);
      step = h * Math.min(3, Math.max(0.2, fitting));
      if (worst <= tolerance || h <= SHORTEST_S) {
        throughput += Math.abs(next[WORK]! - y[WORK]!);
        [y, next] = [next, y];
        time += h;
        steps += 1;
        break;
      }
    }
  }
  const workKj = y[WORK]!;
  const frictionKj = y[FRICTION]!;
  const kineticGainKj = kinetic(y) - startKinetic;
  const storedGainKj = stored(y) - startStored;
  const through = Math.max(throughput, startKinetic + startStored);
  return {
    timesS: Float64Array.from(timesS),
    forcesKn,
    speedsMs,
    mostKn: most,
    leastKn: least,
    energy: {
      workKj,
      workThroughputKj: throughput,
      kineticGainKj,
      storedGainKj,
      frictionKj,
      unclosed: through === 0 ? 0 : Math.abs(workKj - frictionKj - kineticGainKj - storedGainKj) / through,
    },
    steps,
  };
}

export const massChainMethod: Method = {
  id: 'mass-chain',
  name: 'Longitudinal motion of a train: masses joined by draft gears',
  formula:
    'm·v′ = P + F_ahead − F_behind for every vehicle; x′ = v_ahead − v_behind for every coupling; F from the draft gear. Runge–Kutta of orders 3 and 2 with step control. Check: work = kinetic + stored energy + friction, closed within 0.1 %.',
  validRange:
    'Every vehicle one mass, couplers in line, no vertical or lateral motion; until the first wheels leave the rail. Loose lading and sloshing are not in it.',
  sources: [
    { text: 'Newton’s second law', status: 'published' },
    { text: 'Bogacki and Shampine, Applied Mathematics Letters 2 (1989) 321–325', status: 'published' },
  ],
};
