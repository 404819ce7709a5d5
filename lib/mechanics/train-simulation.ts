import type { Method } from '../findings/finding';
import { extensionFor, type DraftGear } from './draft-gear';
import { runChain, type ChainHistory } from './mass-chain';
import {
  trainDrive,
  type Assumption,
  type DrivenVehicle,
  type Handling,
  type LinePoint,
  type Vents,
} from './train-drive';

export type SimulationInput = {
  /** Head end first. */
  readonly vehicles: readonly DrivenVehicle[];
  readonly handling: Handling;
  readonly assumption: Assumption;
  readonly gear: DraftGear;
  readonly recording: number;
  readonly vents: Vents;
  /** The track, distances from the POD; as under the vehicles when not given. */
  readonly line?: readonly LinePoint[];
  /** Distance the recording vehicle runs from the start to the POD, m. */
  readonly runToPodM: number;
  readonly durationS: number;
  /** How often forces are noted, s. */
  readonly everyS: number;
};

export type Simulated = ChainHistory & {
  /** Root mean square of the acceleration that neither handling nor resistance explains, m/s². */
  readonly unexplainedMs2: number;
  /** Root mean square of recorded less simulated speed of the recording vehicle, m/s. */
  readonly speedOffMs: number;
};

/** Forces at the start as if nothing had changed for a while: F_i = Σ_{j>i}(m_j·a − N_j). */
function steadyStart(vehicles: readonly DrivenVehicle[], outside: Float64Array): Float64Array {
  const mass = vehicles.reduce((sum, { massKg }) => sum + massKg, 0);
  const acceleration = outside.reduce((sum, each) => sum + each, 0) / mass;
  const forces = new Float64Array(vehicles.length - 1);
  let behind = 0;
  for (let i = vehicles.length - 2; i >= 0; i -= 1) {
    behind += vehicles[i + 1]!.massKg * acceleration - outside[i + 1]!;
    forces[i] = behind;
  }
  return forces;
}

/**
 * A train through its recorder run: steady at the start, then every coupler with its slack and
 * friction. At least two vehicles; the handling must cover the duration.
 */
export function simulateTrain(input: SimulationInput): Simulated {
  const { vehicles, handling, assumption, gear, recording, vents, line, runToPodM, durationS, everyS } =
    input;
  const { outside, correction } = trainDrive(vehicles, handling, assumption, runToPodM, vents, line);
  const speed = handling.speedMs[0]!;
  const speeds = new Float64Array(vehicles.length).fill(speed);
  const first = new Float64Array(vehicles.length);
  outside(0, 0, speeds, first);
  const extensions = steadyStart(vehicles, first).map((force) => extensionFor(gear, force));
  let squares = 0;
  let weight = 0;
  let before = 0;
  const history = runChain(
    { massesKg: vehicles.map(({ massKg }) => massKg), gears: vehicles.slice(1).map(() => gear) },
    (time, headM, now, out) => {
      squares += correction.latest ** 2 * (time - before);
      weight += time - before;
      before = time;
      outside(time, headM, now, out);
    },
    { speedsMs: speeds, extensionsM: extensions },
    { durationS, everyS },
  );
  return {
    ...history,
    unexplainedMs2: weight > 0 ? Math.sqrt(squares / weight) : 0,
    speedOffMs: speedOff(history, handling, recording),
  };
}

function speedOff({ timesS, speedsMs }: ChainHistory, handling: Handling, recording: number): number {
  let squares = 0;
  let count = 0;
  let from = 0;
  timesS.forEach((time, i) => {
    while (from + 1 < handling.timeS.length && handling.timeS[from + 1]! <= time) from += 1;
    const recorded = handling.speedMs[from]!;
    if (!Number.isFinite(recorded)) return;
    squares += (speedsMs[i]![recording]! - recorded) ** 2;
    count += 1;
  });
  return count === 0 ? NaN : Math.sqrt(squares / count);
}

/** Force in each coupler by the static sum at a moment of the drive, kN: what the simulation settles to. */
export function steadyDrivenForcesKn(input: SimulationInput, timeS: number, headM: number): Float64Array {
  const { vehicles, handling, assumption, runToPodM, vents, line } = input;
  const { outside } = trainDrive(vehicles, handling, assumption, runToPodM, vents, line);
  const out = new Float64Array(vehicles.length);
  const speed = handling.speedMs[Math.min(handling.speedMs.length - 1, Math.round(timeS))]!;
  outside(timeS, headM, new Float64Array(vehicles.length).fill(speed), out);
  return steadyStart(vehicles, out);
}

export const trainSimulationMethod: Method = {
  id: 'train-simulation',
  name: 'Coupler forces through the recorder run',
  formula:
    'Masses and draft gears (see there) driven by the recorder’s throttle, dynamic brake or tractive effort and brake pipe; resistance as in the steady state. An equal push per unit of mass, m·(v_recorded − v)/10 s, keeps to the recorded speed: pushing all alike, it puts nothing into the couplers. Range: each assumption moved to both ends of its range, deviations added as root sum of squares.',
  validRange:
    'From up to five minutes before the POD until just after it, as if nothing derailed: the parting of the brake pipe by the derailment itself is not in it. One kind of draft gear for all couplings. Brake applications run along the train from where the pipe is vented, service at 150 m/s and emergency at 280 m/s: the recording locomotive, and remote locomotives worked with it, which vent at the same moment by radio; in emergency the rear too, where an end-of-train device is said to vent there. Release and filling of cylinders follow the pipe at once; the brakes of locomotives worked together follow the recorded cylinder pressure where there is one. Grade and curve beyond the profile of the line, or without one beyond the train’s own length at the POD, are taken as at its ends.',
  sources: [
    { text: 'Newton’s second law', status: 'published' },
    { text: 'Speeds at which brake applications run along a train', status: 'from memory' },
    { text: 'Ranges of what is assumed', status: 'engineering judgement' },
  ],
};
