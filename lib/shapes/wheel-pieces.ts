import { type PointMm } from '../outline/outline';
import { pointOfPiece, type Piece } from './piece';
import { roundedPolygon } from './rounded';

/** A wheel with a straight tread, a straight flange face and one round tip. mm, rad; coning is rise over run. */
export type WheelDesign = {
  readonly flangeHeightMm: number;
  /** Flange thickness, at this height above the tread reference point. */
  readonly flangeThicknessMm: number;
  readonly thicknessAtMm: number;
  readonly flangeAngleRad: number;
  /** Throat from the flange face to the tread: each arc's radius and the slope at which it gives way to the next. */
  readonly throat: readonly { readonly radiusMm: number; readonly toSlopeRad: number }[];
  readonly coning: number;
  readonly rimWidthMm: number;
  readonly edgeRadiusMm: number;
};

/** The tread reference point is this far from the flange back (EN 15313). */
export const DATUM_FROM_BACK_MM = 70;

/** How far below the tread back and face of the rim are drawn. */
const RIM_DRAWN_TO_MM = -20;

/**
 * The line of a wheel. Its tip arc touches the flange back and the flange face and has the flange height:
 * r (1 + sin δ − cos δ) = t sin δ − (h − a) cos δ, with δ the flange angle, h the height, t the thickness of
 * the straight face carried on to height a. The throat is a chain of arcs that touch each other, the flange face and the tread.
 * Throws when throat and tip overlap (a bug in a shape's dimensions).
 */
export function wheelPieces(design: WheelDesign): Piece[] {
  // The throat may begin above the height of the thickness; then the face stands further back.
  let faceMm = design.flangeThicknessMm;
  for (let round = 0; round < FACE_ROUNDS; round += 1) {
    faceMm += design.flangeThicknessMm - thicknessOf(piecesWithFace(design, faceMm), design.thicknessAtMm);
  }
  return piecesWithFace(design, faceMm);
}

/** Moving the face moves the throat with it almost one to one, so that each round gains about two digits. */
const FACE_ROUNDS = 6;

function thicknessOf(pieces: readonly Piece[], heightMm: number): number {
  for (const piece of pieces) {
    const from = pointOfPiece(piece, 0);
    const to = pointOfPiece(piece, 1);
    if (!piece.runs || from.yMm <= heightMm || to.yMm > heightMm) continue;
    if (piece.kind !== 'arc') {
      const share = (heightMm - from.yMm) / (to.yMm - from.yMm);
      return from.xMm + (to.xMm - from.xMm) * share;
    }
    const rise = heightMm - piece.centre.yMm;
    return piece.centre.xMm - Math.sqrt(piece.radiusMm ** 2 - rise ** 2);
  }
  throw new Error('The flange does not pass the height of its thickness.');
}

function piecesWithFace(design: WheelDesign, flangeThicknessMm: number): Piece[] {
  const { flangeAngleRad: delta, flangeHeightMm, thicknessAtMm, coning } = design;
  const normal = { x: Math.sin(delta), y: Math.cos(delta) };
  const tipRadius =
    (normal.x * flangeThicknessMm - normal.y * (flangeHeightMm - thicknessAtMm)) / (1 + normal.x - normal.y);
  const tip: PointMm = { xMm: tipRadius, yMm: flangeHeightMm - tipRadius };
  const faceTop: PointMm = {
    xMm: tip.xMm + tipRadius * normal.x,
    yMm: tip.yMm + tipRadius * normal.y,
  };

  let acrossMm = 0;
  let downMm = 0;
  let slope = delta;
  for (const { radiusMm, toSlopeRad } of design.throat) {
    acrossMm += radiusMm * (Math.sin(slope) - Math.sin(toSlopeRad));
    downMm += radiusMm * (Math.cos(toSlopeRad) - Math.cos(slope));
    slope = toSlopeRad;
  }
  const faceAt = normal.x * flangeThicknessMm + normal.y * thicknessAtMm;
  const treadFrom =
    (faceAt + normal.x * acrossMm - normal.y * downMm - normal.x * DATUM_FROM_BACK_MM) /
    (normal.x - coning * normal.y);
  const treadStart: PointMm = { xMm: DATUM_FROM_BACK_MM + treadFrom, yMm: -coning * treadFrom };
  const faceEnd: PointMm = { xMm: treadStart.xMm - acrossMm, yMm: treadStart.yMm + downMm };
  if (faceEnd.yMm > faceTop.yMm) throw new Error('The throat reaches above the flange face.');

  const throat: Piece[] = [];
  let at = faceEnd;
  slope = delta;
  for (const { radiusMm, toSlopeRad } of design.throat) {
    const centre: PointMm = {
      xMm: at.xMm + radiusMm * Math.sin(slope),
      yMm: at.yMm + radiusMm * Math.cos(slope),
    };
    throat.push({
      kind: 'arc',
      name: 'throat',
      runs: true,
      centre,
      radiusMm,
      fromRad: -Math.PI / 2 - slope,
      toRad: -Math.PI / 2 - toSlopeRad,
    });
    at = {
      xMm: centre.xMm - radiusMm * Math.sin(toSlopeRad),
      yMm: centre.yMm - radiusMm * Math.cos(toSlopeRad),
    };
    slope = toSlopeRad;
  }
  const treadY = (xMm: number): number => -coning * (xMm - DATUM_FROM_BACK_MM);
  const field = roundedPolygon(
    [
      { ...treadStart, radiusMm: 0, name: 'tread' },
      {
        xMm: design.rimWidthMm,
        yMm: treadY(design.rimWidthMm),
        radiusMm: design.edgeRadiusMm,
        name: 'field edge',
      },
      { xMm: design.rimWidthMm, yMm: RIM_DRAWN_TO_MM, radiusMm: 0, name: 'rim face' },
    ],
    false,
  );
  return [
    {
      kind: 'line',
      name: 'flange back',
      runs: false,
      from: { xMm: 0, yMm: RIM_DRAWN_TO_MM },
      to: { xMm: 0, yMm: tip.yMm },
    },
    {
      kind: 'arc',
      name: 'flange tip',
      runs: true,
      centre: tip,
      radiusMm: tipRadius,
      fromRad: Math.PI,
      toRad: Math.PI / 2 - delta,
    },
    { kind: 'line', name: 'flange face', runs: true, from: faceTop, to: faceEnd },
    ...throat,
    ...field.map((piece, index) => ({ ...piece, runs: index < 2 })),
  ];
}
