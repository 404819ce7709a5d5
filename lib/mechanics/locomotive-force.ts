import type { Method } from '../findings/finding';
import { toCanonical } from '../readings/convert';

const STANDARD_GRAVITY = 9.80665;
const N_PER_KN = 1000;
const NOTCHES = 8;

/** Share of full power in a notch lies between (n/8)² and n/8; `at` 0 takes the first, 1 the second. */
export const notchShare = (notch: number, at: number): number => {
  const part = Math.min(Math.max(notch, 0), NOTCHES) / NOTCHES;
  return part * part + at * (part - part * part);
};

export type LocomotiveRating = {
  readonly massKg: number;
  /** Continuous tractive effort, kN, and the speed it is given at, m/s. */
  readonly ratedKn: number;
  readonly ratedSpeedMs: number;
  /** Largest dynamic-brake force, kN. */
  readonly dynamicBrakeKn: number;
};

/** Throttle notch, 0 to 8, and where between its least and most power it is taken, 0 to 1. */
export type Throttle = { readonly notch: number; readonly at: number };

/**
 * Pull of one locomotive, kN: above the speed at which its rating is given constant power
 * P = F_rated·V_rated, of which the notch uses a share, and at most what the notch and the rails
 * hold: F = min(share·F_rated·V_rated/V, (n/8)·μ·W). `speedMs` V ≥ 0; `adhesion` μ.
 * Source: power is force times speed.
 */
export function tractiveEffortKn(
  { massKg, ratedKn, ratedSpeedMs }: LocomotiveRating,
  { notch, at }: Throttle,
  speedMs: number,
  adhesion: number,
): number {
  const powerShare = notchShare(notch, at);
  if (!(powerShare > 0) || ratedKn === 0) return 0;
  const held = (Math.min(notch, NOTCHES) / NOTCHES) * ((adhesion * massKg * STANDARD_GRAVITY) / N_PER_KN);
  return Math.min((powerShare * ratedKn * ratedSpeedMs) / speedMs, held);
}

/** Below and above these the dynamic brake gives less: proportional to V, and to 1/V. */
const FULL_FROM_MS = toCanonical(6, 'mph', 'speed');
const FULL_UP_TO_MS = toCanonical(25, 'mph', 'speed');

/**
 * Retarding force of one locomotive’s dynamic brake, kN: share·F_full·min(1, V/6 mph, 25 mph/V).
 * `share` 0 to 1 of full; `speedMs` ≥ 0.
 */
export function dynamicBrakeKn(fullKn: number, share: number, speedMs: number): number {
  if (!(share > 0) || speedMs <= 0) return 0;
  return fullKn * Math.min(share, 1) * Math.min(1, speedMs / FULL_FROM_MS, FULL_UP_TO_MS / speedMs);
}

export const locomotiveForceMethod: Method = {
  id: 'locomotive-force',
  name: 'Tractive effort and dynamic brake from notch and speed',
  formula:
    'Pull: F = min(p·F_c·V_c/V, (n/8)·μ·W), so that above V_c it falls as constant power does; p between (n/8)² and n/8 in notch n. Dynamic brake: F = q·F_b·min(1, V/6 mph, 25 mph/V). F_c, V_c: continuous tractive effort and its speed; F_b: largest dynamic-brake force; q: share of full; W: locomotive weight; μ: adhesion, 0.25 to 0.35.',
  validRange:
    'Diesel-electric locomotives, wherever in the train they stand: each in the notch of the recording one unless it is said to be isolated or worked by itself. One worked by itself is taken in the notch entered for the POD, in the simulation all through it. Loading up after a change of notch, wheel slip and cut-outs are not in it; a tractive effort the recorder gives itself is taken instead. Dynamic brake of the extended range: full from 6 to 25 mph.',
  sources: [
    { text: 'Power is force times speed', status: 'published' },
    {
      text: 'Share of power in a notch, and of the largest pull at low speed; adhesion 0.25 to 0.35',
      status: 'engineering judgement',
    },
    { text: 'Shape of the dynamic brake against speed, extended range', status: 'from memory' },
  ],
};
