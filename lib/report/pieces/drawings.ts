import { standing } from '../../case/current';
import { nameOfEntity } from '../../case/name-of';
import type { Entity } from '../../case/record';
import { RECORDED_SPEED_U } from '../../findings/recorder-at-pod';
import { argumentBars } from '../../figures/argument-bars';
import { consistData, consistFigure } from '../../figures/consist';
import { forceHistory } from '../../figures/force-history';
import { gaugeSpan } from '../../figures/gauge-span';
import { gaugeSpanData } from '../../figures/gauge-span-data';
import { markStrip, markStripData } from '../../figures/mark-strip';
import { railLoad } from '../../figures/rail-load';
import { railLoadData } from '../../figures/rail-load-data';
import { recorderChart } from '../../figures/recorder-chart';
import { recorderChartData } from '../../figures/recorder-chart-data';
import { chartPlot, trackChart } from '../../figures/track-chart';
import { paperStretches } from '../../figures/track-chart-window';
import { trackChartData } from '../../figures/track-chart-data';
import { chartLimits } from '../../figures/track-chart-limits';
import { trainProfile } from '../../figures/train-profile';
import { trainProfileData } from '../../figures/train-profile-data';
import { wheelClock } from '../../figures/wheel-clock';
import { wheelClockData } from '../../figures/wheel-clock-data';
import type { Report } from '../report';
import type { Writer } from '../writer';

/** Widths of small drawings, figure units. */
const CLOCK_WIDTH = 520;
const RAIL_WIDTH = 520;

/** One figure unit is 0.75 pt on paper; a drawing of this width fills the text area. */
const unitsFor = (points: number): number => Math.floor(points / 0.75);

/** Panels to a page: fewer would waste paper, more would make a sixteenth of an inch unreadable. */
const PANELS = 3;
/** Room kept for the caption below a chart, points. */
const CAPTION = 34;
const PANEL_HEIGHTS = [60, 118] as const;

/** Track geometry along the track at a stated scale, on pages lying on their side. */
export function trackChartDrawing(report: Report, writer: Writer): void {
  const { rules } = report.context;
  const limits = chartLimits(
    report.context,
    rules.trackClass === undefined ? '' : `${rules.trackClass.label}, ${rules.track?.name ?? ''}`,
  );
  const data = trackChartData(report.record, limits);
  if (data.positionsM.length === 0) return;
  for (let from = 0; from < data.panels.length; from += PANELS) {
    const panels = data.panels.slice(from, from + PANELS);
    writer.newPage('landscape');
    const width = unitsFor(writer.width());
    const { scale, stretches } = paperStretches({ ...data, panels }, chartPlot(width).width);
    stretches.forEach((stretch, index) => {
      if (index > 0) writer.newPage('landscape');
      const draw = (panelHeight: number) => trackChart(stretch, { width, panelHeight, lengthScale: scale });
      const [least, most] = PANEL_HEIGHTS;
      const spare = unitsFor(writer.room() - CAPTION) - draw(least).height;
      const figure = draw(Math.min(most, Math.floor(least + spare / panels.length)));
      const part = stretches.length === 1 ? '' : `, part ${index + 1} of ${stretches.length}`;
      writer.figure(
        figure,
        `Along the track${part}, ${scale.label}: ${panels.map(({ title }) => title.charAt(0).toLowerCase() + title.slice(1)).join('; ')}.`,
        true,
      );
    });
  }
}

export const consistDrawing = (report: Report, writer: Writer): void =>
  writer.figure(
    consistFigure(consistData(report.record), { width: unitsFor(writer.width()) }),
    'The train, head end first: lengths to scale, height by gross weight.',
  );

/** Weight and forces along the train. */
export function trainProfileDrawing(report: Report, writer: Writer): void {
  const { record } = report;
  if (standing(record, 'vehicle').length < 2) return;
  writer.figure(
    trainProfile(trainProfileData(report.context), { width: unitsFor(writer.width()), panelHeight: 66 }),
    'Along the train, head end first: weight, weight behind and, where they could be computed, steady coupler forces at the POD and their L/V on a truck side.',
  );
}

export const markStripDrawing = (report: Report, writer: Writer): void =>
  writer.figure(
    markStrip(markStripData(report.record), { width: unitsFor(writer.width()) }),
    'The marks along the track, numbered as in the table below.',
  );
/** Back-to-back around a wheelset, where it was read at places of the clock. */
export function wheelClockDrawing(report: Report, writer: Writer, wheelset: Entity): void {
  const name = nameOfEntity(report.record, 'wheelset', wheelset);
  const data = wheelClockData(report.context, wheelset.id, name);
  if (data === null || data.readings.length === 0) return;
  writer.figure(wheelClock(data, { width: CLOCK_WIDTH }), `Back-to-back around the wheelset: ${name}.`);
}

/** The recorder around the derailment, seconds before and after the POD was passed. */
const BEFORE_S = 240;
const AFTER_S = 60;

export function recorderDrawing(report: Report, writer: Writer): void {
  const { recorder } = report.input;
  const run = report.record.recorderRuns.find(({ id }) => id === recorder?.runId);
  if (recorder === null || run === undefined) return;
  const samples = recorder.channels;
  const atPod = report.context.recorder;
  const authorised = report.context.read.take('case', report.record.id, 'authorisedSpeed');
  const data = recorderChartData(samples, {
    system: report.system,
    name: run.name,
    atPod,
    authorisedSpeedMs: authorised?.value ?? null,
    speedU: RECORDED_SPEED_U,
  });
  const part = atPod === null ? {} : { fromS: atPod.timeS - BEFORE_S, toS: atPod.timeS + AFTER_S };
  for (const against of ['time', 'distance'] as const) {
    if (against === 'distance' && data.alongM === undefined) continue;
    writer.figure(
      recorderChart(data, { width: unitsFor(writer.width()), panelHeight: 66, against, ...part }),
      `Event recorder, ${run.name}, against ${against}.${atPod === null ? '' : ` POD: ${atPod.remark}`}`,
    );
  }
}

/** Coupler forces at the first derailed vehicle through the run, where they could be simulated. */
export function forceHistoryDrawing({ input, system }: Report, writer: Writer): void {
  const { simulated } = input;
  if (simulated == null) return;
  writer.figure(
    forceHistory(simulated, system, { width: unitsFor(writer.width()), panelHeight: 84 }),
    `Simulated coupler forces at the first derailed vehicle; draft gear: ${simulated.gear.toLowerCase()}. Broken lines: ends of the range of what was assumed.`,
  );
}

export const argumentDrawing = ({ argument }: Report, writer: Writer): void =>
  writer.figure(
    argumentBars(argument, { width: unitsFor(writer.width()) }),
    'What speaks for and against each explanation, decibans against “something else”.',
  );

/** The wheelset in the gauge, and the loads on the rails, where what they need was measured. */
export function mechanicsDrawings({ context, findings }: Report, writer: Writer): void {
  const width = unitsFor(writer.width());
  const span = gaugeSpanData(context, findings);
  if (span !== null) {
    writer.figure(
      gaugeSpan(span, { width }),
      'The first derailed wheelset in the gauge: what is left before a wheel drops in.',
    );
  }
  for (const rail of ['flanging', 'other'] as const) {
    const data = railLoadData(context, findings, rail);
    if (data === null) continue;
    writer.figure(
      railLoad(data, { width: Math.min(width, RAIL_WIDTH) }),
      `Rollover of the rail about its base corner: ${data.name}.`,
    );
  }
}
