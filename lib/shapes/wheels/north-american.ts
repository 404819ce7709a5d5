import { inchesMm } from '../inches';
import { type Piece } from '../piece';
import { wheelPieces, type WheelDesign } from '../wheel-pieces';

const DEGREE = Math.PI / 180;

/** What the freight wheels have in common: 1 in flange, thickness at 3/8 in, tread 1 in 20. */
const COMMON = {
  flangeHeightMm: inchesMm(1),
  thicknessAtMm: inchesMm(3 / 8),
  coning: 1 / 20,
  rimWidthMm: inchesMm(5 + 23 / 32),
  edgeRadiusMm: inchesMm(3 / 8),
};
const TREAD = Math.atan(COMMON.coning);

/** A freight wheel with the flange thickness in inches, 75° flange face and a throat of two radii. */
export const freightWheelPieces = (flangeThicknessIn: number): Piece[] =>
  wheelPieces(seventyFive(flangeThicknessIn));

const seventyFive = (flangeThicknessIn: number): WheelDesign => ({
  ...COMMON,
  flangeThicknessMm: inchesMm(flangeThicknessIn),
  flangeAngleRad: 75 * DEGREE,
  throat: [
    { radiusMm: inchesMm(1 / 2), toSlopeRad: 20 * DEGREE },
    { radiusMm: inchesMm(3 / 2), toSlopeRad: TREAD },
  ],
});

/** The earlier freight wheel: 70° flange face and a throat of one radius, 3/4 in. */
export const earlierFreightWheelPieces = (flangeThicknessIn: number): Piece[] =>
  wheelPieces({
    ...COMMON,
    flangeThicknessMm: inchesMm(flangeThicknessIn),
    flangeAngleRad: 70 * DEGREE,
    throat: [{ radiusMm: inchesMm(3 / 4), toSlopeRad: TREAD }],
  });

export const FREIGHT_NOTES = [
  'Flange height, flange angle, tread slope and rim width are those of the North American standard contours; the flange thickness at 3/8 in is from memory.',
  'The tip is one arc that follows from height, thickness and angle; the standard tip has several.',
];
