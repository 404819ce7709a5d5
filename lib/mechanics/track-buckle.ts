import type { Method } from '../findings/finding';

/** Rail steel. */
const MODULUS_KN_PER_MM2 = 207;
const EXPANSION_PER_C = 11.5e-6;
const DENSITY_KG_PER_M3 = 7850;
const MM2_PER_M2 = 1e6;
const KG_PER_M_OF_LB_PER_YD = 0.45359237 / 0.9144;

/** Rolled weight of the sections, kg/m: the number of an RE section is its pounds per yard. */
const EN_KG_PER_M: Readonly<Record<string, number>> = { '60E1': 60.21, '54E1': 54.77 };

/** Cross-section of a rail, mm², from its rolled weight; NaN for a section whose name does not tell. */
export function railAreaMm2(section: string): number {
  const pounds = /^(\d{2,3})RE$/.exec(section)?.[1];
  const perMetre =
    EN_KG_PER_M[section] ?? (pounds === undefined ? NaN : Number(pounds) * KG_PER_M_OF_LB_PER_YD);
  return (perMetre / DENSITY_KG_PER_M3) * MM2_PER_M2;
}

/**
 * Compression of both rails together, kN, by which they are hotter than neutral: 2·E·A·α·ΔT.
 * Negative: they pull. Fully held rail. Source: Hooke’s law; E = 207 GPa, α = 11.5e-6/°C.
 */
export const railCompressionKn = (areaMm2: number, aboveNeutralC: number): number =>
  2 * MODULUS_KN_PER_MM2 * areaMm2 * EXPANSION_PER_C * aboveNeutralC;

/** Outward push of the compressed rails of a curve on each metre of track, kN/m: N/R. */
export const curvePushKnPerM = (compressionKn: number, curvaturePerM: number): number =>
  compressionKn * Math.abs(curvaturePerM);

/** What ballast holds sideways, kN for each metre of track: lately disturbed to well consolidated. */
export const BALLAST_HOLDS_KN_PER_M = [4, 15] as const;

export const trackBuckleMethod: Method = {
  id: 'track-buckle',
  name: 'Buckle screen: compression of hot rail, and its push in a curve',
  formula:
    'N = 2·E·A·α·(T_rail − T_neutral); outward push N/R on each metre of track against what ballast holds, 4 to 15 kN/m. E = 207 GPa; α = 11.5·10⁻⁶/°C; A from the section’s weight.',
  validRange:
    'Rail held against moving lengthwise. Excludes heat only where the rails were not hotter than neutral; a buckle starts at a misalignment, which this does not see. Neutral temperature from records can be far from the true one.',
  sources: [
    { text: 'Hooke’s law and thermal expansion of steel', status: 'published' },
    { text: 'Lateral resistance of ballast 4 to 15 kN for each metre of track', status: 'from memory' },
  ],
};
