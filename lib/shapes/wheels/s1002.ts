import { DATUM_FROM_BACK_MM } from '../wheel-pieces';
import { type Piece } from '../piece';
import { type ReferenceShape } from '../shape';

/** Sections in s, mm from the tread reference point towards the field side, as the standard writes them. */
const arc = (
  name: string,
  radiusMm: number,
  centre: readonly [number, number],
  fromS: number,
  toS: number,
  side: 1 | -1,
): Piece => {
  const angle = (s: number): number => {
    const run = (s - centre[0]) / radiusMm;
    return Math.atan2(side * Math.sqrt(Math.max(0, 1 - run * run)), run);
  };
  return {
    kind: 'arc',
    name,
    runs: true,
    centre: { xMm: centre[0] + DATUM_FROM_BACK_MM, yMm: centre[1] },
    radiusMm,
    fromRad: angle(fromS),
    toRad: angle(toS),
  };
};
const polynomial = (name: string, fromS: number, toS: number, coefficients: readonly number[]): Piece => ({
  kind: 'polynomial',
  name,
  runs: true,
  originMm: DATUM_FROM_BACK_MM,
  coefficients,
  fromXMm: fromS + DATUM_FROM_BACK_MM,
  toXMm: toS + DATUM_FROM_BACK_MM,
});
const line = (
  name: string,
  runs: boolean,
  from: readonly [number, number],
  to: readonly [number, number],
): Piece => ({
  kind: 'line',
  name,
  runs,
  from: { xMm: from[0], yMm: from[1] },
  to: { xMm: to[0], yMm: to[1] },
});

/** The tread at the chamfer, s = 60. */
const FIELD_END = 1.36432364 - 0.066666667 * 60;

export const s1002: ReferenceShape = {
  id: 's1002',
  name: 'S1002, flange 28 mm high and 32.5 mm thick',
  shape: 'wheel',
  pieces: [
    line('flange back', false, [0, -20], [0, 9.519259302]),
    arc('flange tip, back', 20.5, [-49.5, 9.519259302], -70, -62.764705882, 1),
    arc('flange tip', 12, [-55, 16], -62.764705882, -49.66251, 1),
    arc('flange tip, front', 20, [-58.558326413, 8.83492413], -49.66251, -39.763791, 1),
    polynomial('flange face', -39.763791, -38.426669071, [-93.576667419, -2.747477419]),
    arc('throat', 13, [-26.210665, 16.446], -38.426669071, -35, -1),
    polynomial(
      'throat to tread',
      -35,
      -26,
      [
        -4.320221063e3, -1.038384026e3, -1.065501873e2, -6.051367875, -2.054332446e-1, -4.169739389e-3,
        -4.687195829e-5, -2.25275554e-7,
      ],
    ),
    polynomial(
      'tread',
      -26,
      32.15796,
      [
        0, -3.358537058e-2, 1.565681624e-3, -2.810427944e-5, 5.844240864e-8, -1.562379023e-8, 5.309217349e-15,
        -5.957839843e-12, 2.646656573e-13,
      ],
    ),
    polynomial('field side of the tread', 32.15796, 60, [1.36432364, -0.066666667]),
    line('chamfer', false, [130, FIELD_END], [135, FIELD_END - 5]),
    line('rim face', false, [135, FIELD_END - 5], [135, -20]),
  ],
  source: { text: 'EN 13715, profile S1002, flange height 28 mm, coefficients', status: 'from memory' },
  notes: [
    'The coefficients were written down from memory; they join within 0.0002 mm and give the flange height 28.000 mm, thickness 32.500 mm, qR 10.794 mm and flange angle 70.000° that the standard states.',
    'Rim width 135 mm with a 5 mm chamfer at 45°.',
  ],
};
