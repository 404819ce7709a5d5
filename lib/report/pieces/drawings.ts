import type { Entity } from '../../case/record';
import { buildContext } from '../../findings/context';
import { consistData, consistFigure } from '../../figures/consist';
import { markStrip, markStripData } from '../../figures/mark-strip';
import { trackChart } from '../../figures/track-chart';
import { trackChartData } from '../../figures/track-chart-data';
import type { Report } from '../report';
import type { Writer } from '../writer';

/** One figure unit is 0.75 pt on paper; a drawing of this width fills the text area. */
const unitsFor = (points: number): number => Math.floor(points / 0.75);

/** Panels to a page: fewer would waste paper, more would make a sixteenth of an inch unreadable. */
const PANELS = 3;
/** Room kept for the caption below a chart, points. */
const CAPTION = 34;
const PANEL_HEIGHTS = [60, 118] as const;

/** Track geometry along the track at a stated scale, on pages lying on their side. */
export function trackChartDrawing(report: Report, writer: Writer): void {
  const { rules } = buildContext(report.record, { seed: 0 });
  const limits = {
    from: rules.trackClass === undefined ? '' : `${rules.trackClass.label}, ${rules.track?.name ?? ''}`,
    of: rules.trackLimits,
  };
  const data = trackChartData(report.record, limits);
  if (data.positionsM.length === 0) return;
  for (let from = 0; from < data.panels.length; from += PANELS) {
    const panels = data.panels.slice(from, from + PANELS);
    writer.newPage('landscape');
    const draw = (panelHeight: number) =>
      trackChart({ ...data, panels }, { width: unitsFor(writer.width()), panelHeight, lengthScale: 'paper' });
    const [least, most] = PANEL_HEIGHTS;
    const spare = unitsFor(writer.room() - CAPTION) - draw(least).height;
    const figure = draw(Math.min(most, Math.floor(least + spare / panels.length)));
    writer.figure(
      figure,
      `Along the track: ${panels.map(({ title }) => title.charAt(0).toLowerCase() + title.slice(1)).join('; ')}.`,
    );
  }
}

export const consistDrawing = (report: Report, writer: Writer): void =>
  writer.figure(
    consistFigure(consistData(report.record), { width: unitsFor(writer.width()) }),
    'The train, head end first: lengths to scale, height by gross weight.',
  );

export const markStripDrawing = (report: Report, writer: Writer): void =>
  writer.figure(
    markStrip(markStripData(report.record), { width: unitsFor(writer.width()) }),
    'The marks along the track, numbered as in the table below.',
  );
export function wheelClockDrawing(_report: Report, _writer: Writer, _wheelset: Entity): void {}
export function recorderDrawing(_report: Report, _writer: Writer): void {}
export function argumentDrawing(_report: Report, _writer: Writer): void {}
