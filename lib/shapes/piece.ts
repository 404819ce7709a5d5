import { type PointMm } from '../outline/outline';

type Named = {
  readonly name: string;
  /** A wheel or rail can bear on it: tread, throat, flange; crown, corner and side of the head. */
  readonly runs: boolean;
};

/**
 * One stretch of a shape, walked from its start to its end. mm and rad.
 * - an arc is walked from one angle to the other (counter-clockwise positive, 0 along x);
 * - a polynomial is y = Σ cₖ·(x − origin)ᵏ, lowest power first, walked from one x to the other.
 */
export type Piece = Named &
  (
    | { readonly kind: 'line'; readonly from: PointMm; readonly to: PointMm }
    | {
        readonly kind: 'arc';
        readonly centre: PointMm;
        readonly radiusMm: number;
        readonly fromRad: number;
        readonly toRad: number;
      }
    | {
        readonly kind: 'polynomial';
        readonly originMm: number;
        readonly coefficients: readonly number[];
        readonly fromXMm: number;
        readonly toXMm: number;
      }
  );

const polynomialAt = (coefficients: readonly number[], s: number): number => {
  let sum = 0;
  for (let k = coefficients.length - 1; k >= 0; k -= 1) sum = sum * s + coefficients[k]!;
  return sum;
};

const slopeAt = (coefficients: readonly number[], s: number): number => {
  let sum = 0;
  for (let k = coefficients.length - 1; k >= 1; k -= 1) sum = sum * s + k * coefficients[k]!;
  return sum;
};

/** Point of a piece at a share of its way, 0 at its start and 1 at its end. */
export function pointOfPiece(piece: Piece, share: number): PointMm {
  const between = (from: number, to: number): number => from + (to - from) * share;
  switch (piece.kind) {
    case 'line':
      return { xMm: between(piece.from.xMm, piece.to.xMm), yMm: between(piece.from.yMm, piece.to.yMm) };
    case 'arc': {
      const angle = between(piece.fromRad, piece.toRad);
      return {
        xMm: piece.centre.xMm + piece.radiusMm * Math.cos(angle),
        yMm: piece.centre.yMm + piece.radiusMm * Math.sin(angle),
      };
    }
    case 'polynomial': {
      const xMm = between(piece.fromXMm, piece.toXMm);
      return { xMm, yMm: polynomialAt(piece.coefficients, xMm - piece.originMm) };
    }
  }
}

/** Direction in which a piece is walked, rad from x, at its start or its end. */
export function headingOfPiece(piece: Piece, end: 'start' | 'end'): number {
  switch (piece.kind) {
    case 'line':
      return Math.atan2(piece.to.yMm - piece.from.yMm, piece.to.xMm - piece.from.xMm);
    case 'arc': {
      const turn = Math.sign(piece.toRad - piece.fromRad);
      return (end === 'start' ? piece.fromRad : piece.toRad) + (turn * Math.PI) / 2;
    }
    case 'polynomial': {
      const way = Math.sign(piece.toXMm - piece.fromXMm);
      const xMm = end === 'start' ? piece.fromXMm : piece.toXMm;
      return Math.atan2(way * slopeAt(piece.coefficients, xMm - piece.originMm), way);
    }
  }
}

/** Length of a piece, mm; of a polynomial along a fine chain of chords. */
export function lengthOfPiece(piece: Piece): number {
  if (piece.kind === 'arc') return piece.radiusMm * Math.abs(piece.toRad - piece.fromRad);
  const chords = piece.kind === 'line' ? 1 : 200;
  let length = 0;
  for (let i = 0; i < chords; i += 1) {
    const a = pointOfPiece(piece, i / chords);
    const b = pointOfPiece(piece, (i + 1) / chords);
    length += Math.hypot(b.xMm - a.xMm, b.yMm - a.yMm);
  }
  return length;
}

/** Into how many parts equal in angle or in x a piece goes for none to be longer than `stepMm`. */
export function stepsOfPiece(piece: Piece, stepMm: number): number {
  let length = lengthOfPiece(piece);
  if (piece.kind === 'polynomial') {
    const steepest = Math.max(
      ...Array.from({ length: 51 }, (_, i) => {
        const xMm = piece.fromXMm + ((piece.toXMm - piece.fromXMm) * i) / 50;
        return Math.abs(slopeAt(piece.coefficients, xMm - piece.originMm));
      }),
    );
    length = Math.abs(piece.toXMm - piece.fromXMm) * Math.hypot(1, steepest);
  }
  return Math.max(1, Math.ceil(length / stepMm - 1e-9));
}

/** The same piece seen in a mirror along the upright x = 0, walked the other way. */
export function mirroredPiece(piece: Piece): Piece {
  const flip = ({ xMm, yMm }: PointMm): PointMm => ({ xMm: -xMm, yMm });
  switch (piece.kind) {
    case 'line':
      return { ...piece, from: flip(piece.to), to: flip(piece.from) };
    case 'arc':
      return {
        ...piece,
        centre: flip(piece.centre),
        fromRad: Math.PI - piece.toRad,
        toRad: Math.PI - piece.fromRad,
      };
    case 'polynomial':
      return {
        ...piece,
        originMm: -piece.originMm,
        coefficients: piece.coefficients.map((c, k) => (k % 2 === 0 ? c : -c)),
        fromXMm: -piece.toXMm,
        toXMm: -piece.fromXMm,
      };
  }
}
