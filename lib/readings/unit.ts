/**
 * Units a reading can be entered in, and the one unit each dimension is kept in.
 * The factors stand in ./convert and nowhere else.
 *
 * Sources: inch = 25.4 mm exactly, pound = 0.45359237 kg exactly (international yard and
 * pound agreement, 1959; NIST SP 811, appendix B). Degree of curve: central angle of a
 * 100-ft chord is the railroad definition; here the radius form R = 5729.58/D ft is used
 * (see `lib/track`). 1 lbf = 4.4482216152605 N (NIST SP 811).
 */
export const DIMENSIONS = {
  /** Cross-section length: gauge, crosslevel, wheel and rail readings. Kept in mm. */
  crossLength: { canonical: 'mm', units: ['in', 'ft', 'mm', 'cm', 'm'] },
  /** Distance along the track or along a vehicle. Kept in m. */
  alongTrack: { canonical: 'm', units: ['ft', 'm', 'in', 'mi', 'km'] },
  speed: { canonical: 'm/s', units: ['mph', 'km/h', 'm/s'] },
  mass: { canonical: 'kg', units: ['lb', 'ton', 't', 'kg'] },
  temperature: { canonical: '°C', units: ['°F', '°C'] },
  angle: { canonical: 'rad', units: ['°', 'rad', 'mrad'] },
  curvature: { canonical: '1/m', units: ['°curve', 'm radius', 'ft radius', '1/m'] },
  force: { canonical: 'kN', units: ['lbf', 'kip', 'kN'] },
  pressure: { canonical: 'kPa', units: ['psi', 'kPa', 'bar'] },
  time: { canonical: 's', units: ['s', 'min', 'h'] },
  ratio: { canonical: '1', units: ['1', '%'] },
  /** Rise over run along the track. */
  grade: { canonical: '1', units: ['%', '1'] },
  /** Force for each length that gives way. */
  stiffness: { canonical: 'kN/mm', units: ['kip/in', 'kN/mm'] },
  count: { canonical: '1', units: ['1'] },
} as const;

export type Dimension = keyof typeof DIMENSIONS;
export type Unit = (typeof DIMENSIONS)[Dimension]['units'][number];

/** What the case is worked in: inches and fractions, or millimetres. */
export type UnitSystem = 'us' | 'metric';
