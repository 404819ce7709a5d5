import type { Method, Source } from '../findings/finding';
import { toCanonical } from '../readings/convert';

/** Between side bearings and between spring groups of one truck, and between rail contacts. */
const SIDE_BEARING_SPACING_MM = toCanonical(50, 'in', 'crossLength');
const SPRING_SPACING_MM = toCanonical(79, 'in', 'crossLength');
const CONTACT_SPACING_MM = toCanonical(60, 'in', 'crossLength');

/** Spring group of a freight truck, kN/mm: 14 to 31 kip/in; engineering judgement. */
export const SPRING_GROUP_KN_PER_MM = [2.5, 5.5] as const;
/** Radius at which the body bears on a centre plate that it begins to tip over, mm: plates of 12 to 16 in, and less when worn; engineering judgement. */
export const PLATE_EDGE_MM = [130, 200] as const;
/** One two-axle truck, kN: about 10,000 lb; common practice, no source. */
const TRUCK_KN = toCanonical(10_000, 'lbf', 'force');

/** Load of the body on one centre plate, kN, from the static load of one wheel of a two-axle truck, kN. */
export const onPlateKn = (wheelKn: number): number => Math.max(0, 4 * wheelKn - TRUCK_KN);

export type TwistedCar = {
  /** Twist of the track under the truck centres, either sign, mm. */
  readonly warpMm: number;
  /** Of one side bearing, mm. */
  readonly clearanceMm: number;
  /** Of one spring group, kN/mm. */
  readonly springKnPerMm: number;
  /** Load of the body on one centre plate, kN; see `onPlateKn`. */
  readonly plateKn: number;
  /** Radius at which the plate bears when the body tips over it, mm. */
  readonly plateEdgeMm: number;
};

/**
 * Load that twisted track takes off one wheel of a car on two three-piece trucks, kN. The body does not
 * twist. While its centre plates lie flat the springs of both trucks take the twist; it tips over the
 * edges of the plates when the moment reaches N·r, until the side bearings of both trucks touch; then the
 * springs take the rest: M/(2s), M = max(min(K·φ, N·r), K·(φ − 4c/e)), K = k·b²/4, φ = |warp|/s.
 * Source: statics; spacings e = 50 in, b = 79 in, s = 60 in are common practice, no source.
 */
export function warpUnloadingKn({
  warpMm,
  clearanceMm,
  springKnPerMm,
  plateKn,
  plateEdgeMm,
}: TwistedCar): number {
  const stiffness = (springKnPerMm * SPRING_SPACING_MM ** 2) / 4;
  const twist = Math.abs(warpMm) / CONTACT_SPACING_MM;
  const free = (4 * Math.max(0, clearanceMm)) / SIDE_BEARING_SPACING_MM;
  const flat = Math.min(stiffness * twist, Math.max(0, plateKn) * plateEdgeMm);
  return Math.max(flat, stiffness * (twist - free)) / (2 * CONTACT_SPACING_MM);
}

/** The formula in words of the methods and judgements that use it. */
export const WARP_UNLOADING_FORMULA =
  'M/(2s); M = max(min(K·φ, N·r), K·(φ − 4c/e)); K = k·b²/4; φ = |warp|/s; c: side-bearing clearance; e = 50 in; b = 79 in; s = 60 in; k: spring group, 14 to 31 kip/in; N: body on one centre plate, the load of its wheels less 10,000 lb; r: 5 to 8 in, where the plate bears as the body tips over it';

/** Where its formula and its fixed dimensions are from. */
export const WARP_UNLOADING_SOURCES: readonly Source[] = [
  { text: 'Statics of a stiff car body on two sprung trucks', status: 'published' },
  {
    text: 'Side bearings 50 in and springs 79 in apart; a truck weighs about 10,000 lb',
    status: 'common practice, no source',
  },
];

export const warpUnloadingMethod: Method = {
  id: 'warp-unloading',
  name: 'Load that twisted track takes off a wheel',
  formula: `ΔV = ${WARP_UNLOADING_FORMULA}. Both wheels of a side alike: the side frame shares it between the axles.`,
  validRange:
    'A stiff body on two two-axle trucks whose side frames pitch freely. A twisted body, uneven springs, friction of wedges and preload of constant-contact side bearings are not in it.',
  sources: [
    ...WARP_UNLOADING_SOURCES,
    { text: 'Stiffness of the springs and edge of the centre plate', status: 'engineering judgement' },
  ],
};
