import type { Method, Source } from '../findings/finding';

/**
 * The two gears of one coupling together: free slack, then an elastic part of constant stiffness up
 * to the end of travel, then the car bodies. Friction is a share of the elastic force and always
 * takes energy out.
 */
export type DraftGear = {
  readonly id: string;
  readonly label: string;
  /** Free slack from draft to buff, m. */
  readonly slackM: number;
  /** Travel of both gears in one direction, m. */
  readonly travelM: number;
  /** Elastic force at the end of travel, kN. */
  readonly closedKn: number;
  /** Beyond the travel, kN/m. */
  readonly solidKnPerM: number;
  /** Friction over elastic force, 0 to below 1: loading is 1 + φ, unloading 1 − φ times the elastic force. */
  readonly frictionShare: number;
  readonly source: Source;
};

/** Relative speed at which friction has seven tenths of its size, m/s: smooths its change of sign. */
export const FRICTION_SPEED_MS = 0.03;

const judged = (text: string): Source => ({ text, status: 'engineering judgement' });

/** Characteristics to choose from; the ids are the choices of the quantity `draftGear`. */
export const DRAFT_GEARS: readonly DraftGear[] = [
  {
    id: 'friction',
    label: 'Friction draft gear',
    slackM: 0.019,
    travelM: 0.165,
    closedKn: 1480,
    solidKnPerM: 90_000,
    frictionShare: 0.5,
    source: judged(
      'Two gears of 3 1/4 in travel closing at about 500 kip, two thirds of the energy taken up',
    ),
  },
  {
    id: 'wornFriction',
    label: 'Friction draft gear, worn, much slack',
    slackM: 0.051,
    travelM: 0.165,
    closedKn: 1480,
    solidKnPerM: 90_000,
    frictionShare: 0.25,
    source: judged('As the friction gear, with 2 in of slack and half the friction'),
  },
  {
    id: 'cushioned',
    label: 'End-of-car cushioning',
    slackM: 0.019,
    travelM: 0.5,
    closedKn: 1480,
    solidKnPerM: 90_000,
    frictionShare: 0.7,
    source: judged('Two units of 10 in travel; their dependence on speed is not in it'),
  },
  {
    id: 'solid',
    label: 'Drawbars or articulated, no slack',
    slackM: 0,
    travelM: 0.02,
    closedKn: 1480,
    solidKnPerM: 90_000,
    frictionShare: 0.1,
    source: judged('Drawbar between stiff underframes'),
  },
];

/** The characteristic of that id; the friction gear for one it does not know. */
export const draftGearOf = (id: string | null): DraftGear =>
  DRAFT_GEARS.find((gear) => gear.id === id) ?? DRAFT_GEARS[0]!;

/** Elastic force, kN, at an extension from the middle of the slack, m: draft positive. */
export function elasticForceKn(gear: DraftGear, extensionM: number): number {
  const beyond = Math.abs(extensionM) - gear.slackM / 2;
  if (beyond <= 0) return 0;
  const force =
    beyond <= gear.travelM
      ? (gear.closedKn / gear.travelM) * beyond
      : gear.closedKn + gear.solidKnPerM * (beyond - gear.travelM);
  return extensionM < 0 ? -force : force;
}

/** Energy stored in the elastic part at that extension, kJ. */
export function storedEnergyKj(gear: DraftGear, extensionM: number): number {
  const beyond = Math.abs(extensionM) - gear.slackM / 2;
  if (beyond <= 0) return 0;
  const stiffness = gear.closedKn / gear.travelM;
  if (beyond <= gear.travelM) return (stiffness * beyond * beyond) / 2;
  const over = beyond - gear.travelM;
  return (
    (stiffness * gear.travelM * gear.travelM) / 2 +
    gear.closedKn * over +
    (gear.solidKnPerM * over * over) / 2
  );
}

/**
 * Force of the coupling, kN, with friction: f·(1 + φ·u/√(u² + u₀²)), u: speed at which the gear is
 * being worked further in, m/s. `rateMs` is the rate of extension.
 */
export function gearForceKn(gear: DraftGear, extensionM: number, rateMs: number): number {
  const elastic = elasticForceKn(gear, extensionM);
  if (elastic === 0) return 0;
  const working = elastic > 0 ? rateMs : -rateMs;
  return elastic * (1 + (gear.frictionShare * working) / Math.hypot(working, FRICTION_SPEED_MS));
}

/** Extension, m, at which the elastic force is `forceKn`; the middle of the slack for none. */
export function extensionFor(gear: DraftGear, forceKn: number): number {
  const size = Math.abs(forceKn);
  if (size === 0) return 0;
  const beyond =
    size <= gear.closedKn
      ? (size / gear.closedKn) * gear.travelM
      : gear.travelM + (size - gear.closedKn) / gear.solidKnPerM;
  return Math.sign(forceKn) * (gear.slackM / 2 + beyond);
}

export const draftGearMethod: Method = {
  id: 'draft-gear',
  name: 'Draft gear characteristic',
  formula: `F = f(x)·(1 + φ·u/√(u² + u₀²)); f: none within ± slack/2, then closing force × travel used/travel, then 90 MN/m; u: speed of working further in; u₀ = 0.03 m/s. ${DRAFT_GEARS.map(
    ({ label, slackM, travelM, closedKn, frictionShare }) =>
      `${label}: slack ${(slackM * 1000).toFixed(0)} mm, travel ${(travelM * 1000).toFixed(0)} mm, closing ${closedKn} kN, φ ${frictionShare}`,
  ).join('; ')}.`,
  validRange:
    'Stated characteristics, one for all couplings of the train; gears differ by maker, age and temperature. Preload and the speed dependence of hydraulic units are not in it.',
  sources: DRAFT_GEARS.map(({ source }) => source),
};
