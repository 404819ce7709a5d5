import type { LoadedCase } from '~/app/case.server';
import { assessmentOf } from '~/app/work/assessment.server';
import { argumentBars } from '~/lib/figures/argument-bars';
import type { Figure } from '~/lib/figures/shapes';
import { refTo, type FigureRef } from './view.server';
import { FIGURE_WIDTHS, type FigureWidth } from './widths';

export const ARGUMENT_FIGURE = 'argument';

/** What speaks for and against each explanation; waits for the assessment. */
export async function argumentFigure(loaded: LoadedCase, width: FigureWidth): Promise<Figure> {
  const { argument } = await assessmentOf(loaded);
  return argumentBars(argument, { width: FIGURE_WIDTHS[width] });
}

export async function argumentFigureRef(loaded: LoadedCase): Promise<FigureRef> {
  const [wide, narrow] = await Promise.all([
    argumentFigure(loaded, 'wide'),
    argumentFigure(loaded, 'narrow'),
  ]);
  return refTo(loaded, ARGUMENT_FIGURE, { wide, narrow });
}
