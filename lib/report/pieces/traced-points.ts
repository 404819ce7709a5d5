import { standing } from '../../case/current';
import { nameOfEntity } from '../../case/name-of';
import type { Entity } from '../../case/record';
import type { Trace } from '../../case/trace';
import { behindText, makingText } from '../../case/trace-words';
import { pointTraceData, pointTraceFigure } from '../../figures/point-trace';
import { featureText } from '../../figures/trace-dimensions';
import { POINT_FEATURES, tracedPoint, type TracedPoint } from '../../turnout/point-trace';
import type { Report } from '../report';
import type { Table } from '../table/table';
import { faint, join, mono, type Inline } from '../type/inline';
import { DISTURBANCE_WORDS, localTime, together } from '../words';
import type { Writer } from '../writer';

type Laid = { readonly trace: Trace; readonly point: TracedPoint };

const standingTraces = ({ record }: Report, turnout: Entity): readonly Trace[] =>
  record.traces
    .filter(({ subject, removed }) => removed === null && subject.id === turnout.id)
    .sort((a, b) => a.side.localeCompare(b.side) || (a.behindMm ?? 0) - (b.behindMm ?? 0));

/** Whether anything was traced of a point of the case. */
export const anyPointTraced = ({ record }: Report): boolean =>
  record.traces.some(({ shape, removed }) => shape === 'point' && removed === null);

/** The outlines of the points of every turnout, drawn each by itself, with what is taken from them. */
export function pointDrawings(report: Report, writer: Writer): void {
  for (const turnout of standing(report.record, 'turnout')) {
    const traces = standingTraces(report, turnout);
    if (traces.length === 0) continue;
    writer.lead(nameOfEntity(report.record, 'turnout', turnout));
    const laid = traces.flatMap((trace): readonly Laid[] => {
      const point = tracedPoint(trace);
      if (point.ok) return [{ trace, point: point.value }];
      writer.text(
        join(`The ${partOf(trace)}: `, provenance(report, trace), ` It could not be laid: ${point.message}`),
      );
      return [];
    });
    for (const pair of inPairs(laid)) {
      for (const each of pair) drawn(report, writer, each);
      writer.table(`Features of the outlines: ${namesOf(pair)}`, features(pair, report));
    }
    if (laid.length === 0) continue;
    for (const { trace } of laid) writer.text(provenance(report, trace));
    writer.list([...new Set(laid.flatMap(({ point }) => point.remarks))]);
  }
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const partOf = (trace: Trace): string => `${trace.side} point ${behindText(trace)}`;

const inPairs = (laid: readonly Laid[]): readonly (readonly Laid[])[] =>
  laid.flatMap((_, i) => (i % 2 === 0 ? [laid.slice(i, i + 2)] : []));

const namesOf = (laid: readonly Laid[]): string => laid.map(({ trace }) => partOf(trace)).join(', ');

function drawn({ system }: Report, writer: Writer, { trace, point }: Laid): void {
  writer.figure(
    pointTraceFigure(pointTraceData(partOf(trace), point, system), { width: FIGURE_PX }),
    `Cross-section of the ${partOf(trace)}: back against the stock rail at the left, gauge side at the right; ±: k = 2.`,
    true,
  );
}

const FIGURE_PX = 520;

const features = (laid: readonly Laid[], { system }: Report): Table => ({
  columns: [
    { head: 'Feature', share: 0.22 },
    ...laid.map(({ trace }) => ({ head: `${capital(partOf(trace))}, ± U (k = 2)` })),
    { head: 'What it is', share: 0.3 },
  ],
  rows: POINT_FEATURES.map(({ id, name, dimension, meaning }) => ({
    cells: [
      name,
      ...laid.map(({ point }) => {
        const found = point.features[id];
        return found.ok
          ? together(featureText(found.value.value, found.value.u, dimension, system))
          : [faint('not found')];
      }),
      meaning,
    ],
  })),
});

/** How the trace was made, how well it is known, and the file it can be made again from. */
export function provenance(report: Report, trace: Trace): Inline {
  const taken = trace.takenAt === null ? 'Not dated.' : `Taken ${localTime(trace.takenAt)}.`;
  return join(
    [...report.refs.cite([trace.id]), { text: ' ' }],
    `${makingText(trace.making)}; ${trace.pointsMm.length / 2} points. ${taken} State when taken: ${DISTURBANCE_WORDS[trace.disturbance]}. ${trace.uncertainty.because.join(' ')} File ${trace.fileName}, SHA-256 `,
    [mono(trace.sha256)],
    '.',
  );
}
