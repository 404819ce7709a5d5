import type { LoadedCase } from '~/app/case.server';
import { pointData, pointFigure } from '~/app/figures/case-figures.server';
import { figureRef, type FigureRef } from '~/app/figures/view.server';
import { pointSectionNotes } from '~/lib/figures/point-section';

export type PointView = {
  readonly figure: FigureRef;
  /** How the drawing is to be read. */
  readonly reading: readonly string[];
  /** What wheel, stock rail and point were taken from. */
  readonly from: readonly string[];
};

/** Flange, point and stock rail of one turnout, drawn; null where there is nothing to draw. */
export function pointView(loaded: LoadedCase, turnoutId: string): PointView | null {
  const data = pointData(loaded, turnoutId);
  const figure = data && figureRef(loaded, pointFigure(turnoutId));
  return data && figure && { figure, reading: pointSectionNotes(data), from: data.remarks };
}
