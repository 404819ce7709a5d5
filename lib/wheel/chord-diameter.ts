import type { Method } from '../findings/finding';

/**
 * Wheel diameter from the height of the tread above a chord: D = c²/(4h) + h.
 * Units: any one length unit, the same for all. Range: h > 0 (h = 0 gives Infinity: a flat).
 * Source: sagitta of a circular arc (Euclid, Elements III.35).
 */
export function diameterFromChord(chord: number, height: number): number {
  return (chord * chord) / (4 * height) + height;
}

/**
 * How fast the diameter moves with the height: dD/dh = 1 − c²/(4h²). Negative for any chord
 * below the centre; its size is the factor by which an error of height is magnified.
 * Units and range as `diameterFromChord`.
 */
export function diameterPerHeight(chord: number, height: number): number {
  return 1 - (chord * chord) / (4 * height * height);
}

/** How fast the diameter moves with the chord: dD/dc = c/(2h). */
export function diameterPerChord(chord: number, height: number): number {
  return chord / (2 * height);
}

/**
 * Height of the tread above a chord of a wheel of known diameter, the shorter arc:
 * h = (D − √(D² − c²))/2. NaN when the chord is longer than the diameter.
 */
export function heightFromDiameter(chord: number, diameter: number): number {
  // Written so that no digits are lost when the chord is short against the diameter.
  return (chord * chord) / (2 * (diameter + Math.sqrt(diameter * diameter - chord * chord)));
}

export const chordDiameterMethod: Method = {
  id: 'chord-diameter',
  name: 'Wheel diameter from a chord',
  formula:
    'D = c²/(4h) + h; dD/dh = 1 − c²/(4h²). c: distance between the feet on the tread, h: height of the tread above the chord midway, D: diameter.',
  validRange:
    'h > 0, feet and plunger on the same round part of the tread. The shorter the chord, the more an error of h is magnified.',
  sources: [{ text: 'Circle geometry: Euclid, Elements III.35', status: 'published' }],
};
