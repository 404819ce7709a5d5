import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { MECHANICS_DRAWINGS } from '~/app/rails/drawings.server';
import { readingsOf } from '~/app/readings/index.server';
import { systemOf } from '~/app/readings/take.server';
import { chartLimits } from '~/app/track/chart-limits.server';
import { readRecorderRun } from '~/db/recorder';
import { standing } from '~/lib/case/current';
import { consistData, consistFigure } from '~/lib/figures/consist';
import { markStrip, markStripData } from '~/lib/figures/mark-strip';
import { recorderChart } from '~/lib/figures/recorder-chart';
import type { Figure } from '~/lib/figures/shapes';
import { trackChart } from '~/lib/figures/track-chart';
import { trackChartData } from '~/lib/figures/track-chart-data';
import { FIGURE_WIDTHS, type FigureWidth } from './widths';

type Draw = (loaded: LoadedCase, width: number) => Figure | null;

function drawTrack(loaded: LoadedCase, width: number): Figure | null {
  const data = derived(loaded, 'track chart data', () => trackChartData(loaded.record, chartLimits(loaded)));
  return data.positionsM.length === 0 ? null : trackChart(data, { width });
}

const drawConsist: Draw = ({ record }, width) =>
  standing(record, 'vehicle').length === 0 ? null : consistFigure(consistData(record), { width });

const drawMarks: Draw = ({ record }, width) =>
  standing(record, 'mark').length === 0 ? null : markStrip(markStripData(record), { width });

function drawRun(loaded: LoadedCase, runId: string, width: number): Figure | null {
  const { record, db } = loaded;
  const run = record.recorderRuns.find(({ id, removed }) => id === runId && removed === null);
  if (!run) return null;
  const samples = readRecorderRun(db, run.id);
  const authorised = readingsOf(loaded, { kind: 'case', id: loaded.caseId })
    .filter(({ quantity }) => quantity === 'authorisedSpeed')
    .at(-1);
  return recorderChart(
    {
      system: systemOf(record.fields),
      name: run.name,
      samples,
      podTimeS: null,
      authorisedSpeedMs: authorised?.value ?? null,
    },
    { width },
  );
}

const RUN = 'recorder-';
export const runFigure = (runId: string): string => `${RUN}${runId}`;

/** The drawings of a case, by the name they have in its addresses. */
const DRAW: Readonly<Record<string, Draw>> = {
  'track-chart': drawTrack,
  consist: drawConsist,
  marks: drawMarks,
  ...MECHANICS_DRAWINGS,
};

function drawFor(name: string): Draw | null {
  if (name.startsWith(RUN)) return (loaded, width) => drawRun(loaded, name.slice(RUN.length), width);
  return Object.hasOwn(DRAW, name) ? (DRAW[name] ?? null) : null;
}

/** The drawing of that name; null when there is none, or nothing to draw yet. */
export const caseFigure = (loaded: LoadedCase, name: string, width: FigureWidth): Figure | null =>
  derived(loaded, `figure ${name} ${width}`, () => drawFor(name)?.(loaded, FIGURE_WIDTHS[width]) ?? null);
