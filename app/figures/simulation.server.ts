import type { LoadedCase } from '~/app/case.server';
import { systemOf } from '~/app/readings/take.server';
import { simulationOf } from '~/app/work/simulation.server';
import { forceHistory } from '~/lib/figures/force-history';
import type { Figure } from '~/lib/figures/shapes';
import { refTo, type FigureRef } from './view.server';
import { FIGURE_WIDTHS, type FigureWidth } from './widths';

export const SIMULATION_FIGURE = 'simulated-forces';

/** Simulated coupler forces at the first derailed vehicle; waits for the worker. */
export async function simulationFigure(loaded: LoadedCase, width: FigureWidth): Promise<Figure | null> {
  const simulated = await simulationOf(loaded);
  return simulated.kind === 'simulated'
    ? forceHistory(simulated, systemOf(loaded.record.fields), { width: FIGURE_WIDTHS[width] })
    : null;
}

export async function simulationFigureRef(loaded: LoadedCase): Promise<FigureRef | null> {
  const [wide, narrow] = await Promise.all([
    simulationFigure(loaded, 'wide'),
    simulationFigure(loaded, 'narrow'),
  ]);
  return wide && narrow && refTo(loaded, SIMULATION_FIGURE, { wide, narrow });
}
