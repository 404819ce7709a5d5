import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { caseContext } from '~/app/findings/case-findings.server';
import { recorderMoment } from '~/app/findings/recorder-speed.server';
import { MECHANICS_DRAWINGS } from '~/app/rails/drawings.server';
import { readingsOf } from '~/app/readings/index.server';
import { systemOf } from '~/app/readings/take.server';
import { CHART_NAME, chartData, windowOfName } from '~/app/track/chart.server';
import { readRecorderRun } from '~/db/recorder';
import { standing } from '~/lib/case/current';
import { RECORDED_SPEED_U } from '~/lib/findings/recorder-at-pod';
import { consistData, consistFigure } from '~/lib/figures/consist';
import { markStrip, markStripData } from '~/lib/figures/mark-strip';
import { pointSection } from '~/lib/figures/point-section';
import { pointSectionData, type PointSectionData } from '~/lib/figures/point-section-data';
import { recorderChart } from '~/lib/figures/recorder-chart';
import { recorderChartData } from '~/lib/figures/recorder-chart-data';
import type { Figure } from '~/lib/figures/shapes';
import { trainProfile } from '~/lib/figures/train-profile';
import { trainProfileData } from '~/lib/figures/train-profile-data';
import { trackChart } from '~/lib/figures/track-chart';
import { chartWindow } from '~/lib/figures/track-chart-window';
import { FIGURE_WIDTHS, type FigureWidth } from './widths';

type Draw = (loaded: LoadedCase, width: number) => Figure | null;

function drawTrack(loaded: LoadedCase, width: number): Figure | null {
  const data = chartData(loaded);
  return data.positionsM.length === 0 ? null : trackChart(data, { width });
}

/** A stretch of the track chart; null for a name that is none. */
function drawStretch(loaded: LoadedCase, name: string, width: number): Figure | null {
  const stretch = windowOfName(loaded, name);
  const data = chartData(loaded);
  return stretch === null || data.positionsM.length === 0
    ? null
    : trackChart(chartWindow(data, stretch.fromM, stretch.toM), { width });
}

const drawConsist: Draw = ({ record }, width) =>
  standing(record, 'vehicle').length === 0 ? null : consistFigure(consistData(record), { width });

const drawProfile: Draw = (loaded, width) =>
  standing(loaded.record, 'vehicle').length < 2
    ? null
    : trainProfile(
        derived(loaded, 'train profile', () => trainProfileData(caseContext(loaded))),
        { width },
      );

const drawMarks: Draw = ({ record }, width) =>
  standing(record, 'mark').length === 0 ? null : markStrip(markStripData(record), { width });

function drawRun(
  loaded: LoadedCase,
  runId: string,
  width: number,
  against: 'time' | 'distance',
): Figure | null {
  const { record, db } = loaded;
  const run = record.recorderRuns.find(({ id, removed }) => id === runId && removed === null);
  if (!run) return null;
  const samples = readRecorderRun(db, run.id);
  const authorised = readingsOf(loaded, { kind: 'case', id: loaded.caseId })
    .filter(({ quantity }) => quantity === 'authorisedSpeed')
    .at(-1);
  const atPod = recorderMoment(loaded);
  const data = derived(loaded, `recorder chart ${run.id}`, () =>
    recorderChartData(samples, {
      system: systemOf(record.fields),
      name: run.name,
      atPod: atPod?.runId === run.id ? atPod : null,
      authorisedSpeedMs: authorised?.value ?? null,
      speedU: RECORDED_SPEED_U,
    }),
  );
  if (against === 'distance' && data.alongM === undefined) return null;
  return recorderChart(data, { width, against });
}

const RUN = { time: 'recorder-', distance: 'recorder-distance-' } as const;
export const runFigure = (runId: string, against: keyof typeof RUN = 'time'): string =>
  `${RUN[against]}${runId}`;

const POINT = 'point-';
export const pointFigure = (turnoutId: string): string => `${POINT}${turnoutId}`;

/** What is drawn of one facing point; null where its clearances could not be computed. */
export const pointData = (loaded: LoadedCase, turnoutId: string): PointSectionData | null =>
  derived(loaded, `point sections ${turnoutId}`, () => pointSectionData(caseContext(loaded), turnoutId));

function drawPoint(loaded: LoadedCase, turnoutId: string, width: number): Figure | null {
  const data = pointData(loaded, turnoutId);
  return data && pointSection(data, { width });
}

/** The drawings of a case, by the name they have in its addresses. */
const DRAW: Readonly<Record<string, Draw>> = {
  [CHART_NAME]: drawTrack,
  consist: drawConsist,
  'train-profile': drawProfile,
  marks: drawMarks,
  ...MECHANICS_DRAWINGS,
};

function drawFor(name: string): Draw | null {
  if (name.startsWith(`${CHART_NAME}_`)) return (loaded, width) => drawStretch(loaded, name, width);
  if (name.startsWith(POINT)) return (loaded, width) => drawPoint(loaded, name.slice(POINT.length), width);
  // The longer name first: the shorter one begins it too.
  for (const against of ['distance', 'time'] as const) {
    const start = RUN[against];
    if (name.startsWith(start))
      return (loaded, width) => drawRun(loaded, name.slice(start.length), width, against);
  }
  return Object.hasOwn(DRAW, name) ? (DRAW[name] ?? null) : null;
}

/** The drawing of that name; null when there is none, or nothing to draw yet. */
export const caseFigure = (loaded: LoadedCase, name: string, width: FigureWidth): Figure | null =>
  derived(loaded, `figure ${name} ${width}`, () => drawFor(name)?.(loaded, FIGURE_WIDTHS[width]) ?? null);
