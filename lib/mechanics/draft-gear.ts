import type { Method, Source } from '../findings/finding';

/** A property of a gear and how far it is taken to vary from gear to gear. */
export type Spread = { readonly usual: number; readonly least: number; readonly most: number };

/**
 * The two gears of one coupling together: free slack, then an elastic part up to the end of travel,
 * then the car bodies. Friction is a share of the elastic force and always takes energy out.
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
  /**
   * Share of the elastic force that grows with the cube of the travel used, 0 to below 1; the rest
   * grows with the travel. Work to the end of travel is 1/2 − share/4 of force × travel.
   */
  readonly cubicShare: number;
  /** Friction over elastic force, 0 to below 1: loading is 1 + φ, unloading 1 − φ times the elastic force. */
  readonly frictionShare: number;
  readonly source: Source;
};

/** A gear to choose, with the spread of what makes its form. */
export type KindOfGear = Omit<DraftGear, 'cubicShare' | 'frictionShare'> & {
  readonly cubic: Spread;
  readonly friction: Spread;
};

/** Relative speed at which friction has seven tenths of its size, m/s: smooths its change of sign. */
export const FRICTION_SPEED_MS = 0.03;

const judged = (text: string): Source => ({ text, status: 'engineering judgement' });
const spread = (usual: number, least: number, most: number): Spread => ({ usual, least, most });

/** Work of the loading stroke 0.26 to 0.40 of force × travel; see `DATA_SHEET`. */
const FRICTION_GEAR_CUBIC = spread(0.68, 0.4, 0.95);
const SOLID_KN_PER_M = 90_000;

/** Characteristics to choose from; the ids are the choices of the quantity `draftGear`. */
export const KINDS_OF_GEAR: readonly KindOfGear[] = [
  {
    id: 'friction',
    label: 'Friction draft gear',
    slackM: 0.019,
    travelM: 0.165,
    closedKn: 1480,
    solidKnPerM: SOLID_KN_PER_M,
    cubic: FRICTION_GEAR_CUBIC,
    friction: spread(0.5, 0.35, 0.65),
    source: judged(
      'Two gears of 3 1/4 in travel closing at about 500 kip, a half to four fifths of the energy taken up',
    ),
  },
  {
    id: 'wornFriction',
    label: 'Friction draft gear, worn, much slack',
    slackM: 0.051,
    travelM: 0.165,
    closedKn: 1480,
    solidKnPerM: SOLID_KN_PER_M,
    cubic: FRICTION_GEAR_CUBIC,
    friction: spread(0.25, 0.1, 0.4),
    source: judged('As the friction gear, with 2 in of slack and half the friction'),
  },
  {
    id: 'cushioned',
    label: 'End-of-car cushioning',
    slackM: 0.019,
    travelM: 0.5,
    closedKn: 1480,
    solidKnPerM: SOLID_KN_PER_M,
    cubic: spread(0.3, 0, 0.6),
    friction: spread(0.7, 0.5, 0.9),
    source: judged('Two units of 10 in travel; their dependence on speed is not in it'),
  },
  {
    id: 'solid',
    label: 'Drawbars or articulated, no slack',
    slackM: 0,
    travelM: 0.02,
    closedKn: 1480,
    solidKnPerM: SOLID_KN_PER_M,
    cubic: spread(0, 0, 0.5),
    friction: spread(0.1, 0, 0.2),
    source: judged('Drawbar between stiff underframes'),
  },
];

const DATA_SHEET: Source = {
  text: 'A maker’s data sheet, not named here, of a friction gear to AAR M-901E: 45,520 ft·lb taken in at 2.93 in of travel and 566 kip, 0.33 of force × travel',
  status: 'published',
};

/** The kind of that id; the friction gear for one it does not know. */
export const kindOfGear = (id: string | null): KindOfGear =>
  KINDS_OF_GEAR.find((kind) => kind.id === id) ?? KINDS_OF_GEAR[0]!;

/** Where in its spread each property of a gear is taken; `slack` is a multiple of the kind’s. */
export type GearAt = {
  readonly slack?: number;
  readonly cubic?: keyof Spread;
  readonly friction?: keyof Spread;
};

/** A gear of that kind, as it usually is where nothing else is asked for. */
export const gearOf = ({ cubic, friction, slackM, ...kind }: KindOfGear, at: GearAt = {}): DraftGear => ({
  ...kind,
  slackM: slackM * (at.slack ?? 1),
  cubicShare: cubic[at.cubic ?? 'usual'],
  frictionShare: friction[at.friction ?? 'usual'],
});

/** Elastic force over that at the end of travel, at the share `used` of the travel, 0 to 1. */
const shareOfForce = (q: number, used: number): number => used * (1 - q + q * used * used);

/** Work to the share `used` of the travel, over force at its end × travel. */
const shareOfWork = (q: number, used: number): number => used * used * ((1 - q) / 2 + (q * used * used) / 4);

/** Elastic force, kN, at an extension from the middle of the slack, m: draft positive. */
export function elasticForceKn(gear: DraftGear, extensionM: number): number {
  const beyond = Math.abs(extensionM) - gear.slackM / 2;
  if (beyond <= 0) return 0;
  const force =
    beyond <= gear.travelM
      ? gear.closedKn * shareOfForce(gear.cubicShare, beyond / gear.travelM)
      : gear.closedKn + gear.solidKnPerM * (beyond - gear.travelM);
  return extensionM < 0 ? -force : force;
}

/** Energy stored in the elastic part at that extension, kJ. */
export function storedEnergyKj(gear: DraftGear, extensionM: number): number {
  const beyond = Math.abs(extensionM) - gear.slackM / 2;
  if (beyond <= 0) return 0;
  const whole = gear.closedKn * gear.travelM;
  if (beyond <= gear.travelM) return whole * shareOfWork(gear.cubicShare, beyond / gear.travelM);
  const over = beyond - gear.travelM;
  return (
    whole * shareOfWork(gear.cubicShare, 1) + gear.closedKn * over + (gear.solidKnPerM * over * over) / 2
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

/** Share of the travel at which the elastic force is the share `force` of that at its end, 0 to 1. */
function shareOfTravel(q: number, force: number): number {
  if (q === 0) return force;
  // The one real root of u³ + a·u = b, a and b not negative (Cardano, with sinh).
  const a = (1 - q) / q;
  const b = force / q;
  return 2 * Math.sqrt(a / 3) * Math.sinh(Math.asinh(((3 * b) / (2 * a)) * Math.sqrt(3 / a)) / 3);
}

/** Extension, m, at which the elastic force is `forceKn`; the middle of the slack for none. */
export function extensionFor(gear: DraftGear, forceKn: number): number {
  const size = Math.abs(forceKn);
  if (size === 0) return 0;
  const beyond =
    size <= gear.closedKn
      ? shareOfTravel(gear.cubicShare, size / gear.closedKn) * gear.travelM
      : gear.travelM + (size - gear.closedKn) / gear.solidKnPerM;
  return Math.sign(forceKn) * (gear.slackM / 2 + beyond);
}

const said = ({ usual, least, most }: Spread): string => `${usual} (${least} to ${most})`;

export const draftGearMethod: Method = {
  id: 'draft-gear',
  name: 'Draft gear characteristic',
  formula: `F = f(x)·(1 + φ·u/√(u² + u₀²)); f: none within ± slack/2, then closing force·(ξ·(1 − q) + q·ξ³), ξ = share of the travel used, then 90 MN/m; u: speed of working further in; u₀ = 0.03 m/s. ${KINDS_OF_GEAR.map(
    ({ label, slackM, travelM, closedKn, cubic, friction }) =>
      `${label}: slack ${(slackM * 1000).toFixed(0)} mm, travel ${(travelM * 1000).toFixed(0)} mm, closing ${closedKn} kN, q ${said(cubic)}, φ ${said(friction)}`,
  ).join('; ')}.`,
  validRange:
    'Stated characteristics, one for all couplings of the train; gears differ by maker, age and temperature, so q and φ are moved through the ranges in brackets. Preload and the speed dependence of hydraulic units are not in it.',
  sources: [DATA_SHEET, ...KINDS_OF_GEAR.map(({ source }) => source)],
};
