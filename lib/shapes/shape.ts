import { type Source } from '../findings/finding';
import { outlineOf, type Outline } from '../outline/outline';
import { type StandardShape } from '../case/trace';
import { pointOfPiece, stepsOfPiece, type Piece } from './piece';

/** A new wheel or rail as drawn by its standard, to lay traces over. In the frame of `../outline/outline`. */
export type ReferenceShape = {
  readonly id: string;
  readonly name: string;
  readonly shape: StandardShape;
  /** Of a rail: its section in `../rail/sections`, whose overall sizes it has exactly. */
  readonly sectionId?: string;
  /**
   * The whole line, piece after piece. Of a rail from the gauge-side edge of the base over the head to
   * the field-side edge, so that a straight line closes it; of a wheel from the back of the rim to its field side.
   */
  readonly pieces: readonly Piece[];
  /** The least sure of its dimensions decides the status. */
  readonly source: Source;
  /** What a reader must know: which dimensions are sure and which are not. */
  readonly notes: readonly string[];
};

/** What of a shape to draw: all of it, or what a wheel or rail can bear on. */
export type ShapePart = 'whole' | 'running';

/**
 * A shape as a line of points, at most `stepMm` apart (> 0), with a point at every join of two pieces.
 * `running` leaves out the web, base and underside of a rail and the back and face of a wheel's rim.
 */
export function outlineOfShape(
  shape: ReferenceShape,
  stepMm: number = 0.25,
  part: ShapePart = 'whole',
): Outline {
  const xMm: number[] = [];
  const yMm: number[] = [];
  for (const piece of shape.pieces) {
    if (part === 'running' && !piece.runs) continue;
    const steps = stepsOfPiece(piece, stepMm);
    for (let i = xMm.length === 0 ? 0 : 1; i <= steps; i += 1) {
      const point = pointOfPiece(piece, i / steps);
      xMm.push(point.xMm);
      yMm.push(point.yMm);
    }
  }
  return outlineOf(xMm, yMm);
}
