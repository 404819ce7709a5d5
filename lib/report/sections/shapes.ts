import { nameOfEntity } from '../../case/name-of';
import { outlineOverlay } from '../../figures/outline-overlay';
import { featureText } from '../../figures/trace-dimensions';
import { traceOverlay, type TraceOverlay } from '../../figures/trace-overlay';
import { FINDING_SEED } from '../../findings/context';
import { absentMany } from '../pieces/absent';
import { contactDrawings } from '../pieces/contact-drawings';
import { anyPointTraced, pointDrawings, provenance } from '../pieces/traced-points';
import { latest, tracedRails, tracedWheels, type TracedThing } from '../pieces/traced-shapes';
import { wearDrawings } from '../pieces/wear-drawings';
import type { Report, Section } from '../report';
import type { Table } from '../table/table';
import { faint, join } from '../type/inline';
import { counted, localTime, together } from '../words';
import type { Writer } from '../writer';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

function featuresTable({ features }: TraceOverlay, { system }: Report): Table {
  return {
    columns: [
      { head: 'Feature', share: 0.26 },
      { head: 'Value ± U (k = 2)', share: 0.2 },
      { head: 'What it is' },
    ],
    rows: features.map(({ name, dimension, meaning, found }) => ({
      cells: [
        name,
        found.ok
          ? together(featureText(found.value.value, found.value.u, dimension, system))
          : [faint('not found')],
        found.ok ? meaning : join(meaning, ' ', [faint(found.message)]),
      ],
    })),
  };
}

function referenceText({ reference, overlay }: TraceOverlay): string {
  if (reference === null) {
    return 'No reference shape of this section is known to the program: nothing is laid under it.';
  }
  const { name, source, notes } = reference;
  const why =
    overlay.shape === 'wheel'
      ? ' It is laid under every traced wheel; that this wheel was made to it is not said.'
      : '';
  return [`Reference: ${name}. ${source.text} (${source.status}).${why}`, ...notes].join(' ');
}

function drawThing(report: Report, writer: Writer, kind: 'wheelset' | 'rail', thing: TracedThing): void {
  const trace = latest(thing);
  const entity = nameOfEntity(report.record, kind, thing.entity);
  const name = kind === 'wheelset' ? `${thing.side} wheel, ${lower(entity)}` : lower(entity);
  writer.lead(capital(name));
  const earlier = thing.traces
    .filter((each) => each !== trace)
    .reverse()
    .map((each) => ({
      trace: each,
      label: each.takenAt === null ? 'an earlier trace' : `traced ${localTime(each.takenAt.slice(0, 10))}`,
    }));
  const drawn = traceOverlay(report.record, trace, FINDING_SEED, earlier);
  if (!drawn.ok) {
    writer.text(join(provenance(report, trace), ` It could not be placed: ${drawn.message}`));
    return;
  }
  writer.figure(
    outlineOverlay(drawn.value.overlay, {
      width: Math.floor(writer.width() / 0.75),
      lengthScale: 'paper',
    }),
    `Outline of the ${name}, over its reference.`,
    true,
  );
  writer.table(`Features of the outline: ${name}`, featuresTable(drawn.value, report));
  writer.text(provenance(report, trace));
  writer.text(referenceText(drawn.value));
  if (drawn.value.remarks.length > 0) writer.list(drawn.value.remarks);
}

/** Outlines that are not drawn here are named with where they stand. */
function others(report: Report, writer: Writer, drawn: readonly TracedThing[]): void {
  const here = new Set(drawn.flatMap(({ traces }) => traces.map(({ id }) => id)));
  const rest = report.record.traces.filter(
    ({ id, shape, removed }) => removed === null && shape !== 'point' && !here.has(id),
  );
  if (rest.length === 0) return;
  writer.text(
    join(
      `${capital(counted(rest.length, 'outline of another wheel is', 'outlines of other wheels are'))} in the appendix of readings: `,
      report.refs.cite(rest.map(({ id }) => id)),
      '.',
    ),
  );
}

export const shapesSection: Section = {
  id: 'shapes',
  title: 'Shapes of wheels, rails and points',
  kind: 'numbered',
  build(report, writer) {
    const [wheels, rails] = [tracedWheels(report.context), tracedRails(report.context)];
    if (report.record.traces.every(({ removed }) => removed !== null)) {
      return absentMany(writer, 'Outlines of wheels, rails and points');
    }
    writer.heading('Wheels of the first derailed wheelset');
    if (wheels.length === 0) absentMany(writer, 'Outlines of its wheels');
    for (const wheel of wheels) drawThing(report, writer, 'wheelset', wheel);
    writer.heading('Rails at or before the POD');
    if (rails.length === 0) absentMany(writer, 'Outlines of the rails');
    for (const rail of rails) drawThing(report, writer, 'rail', rail);
    others(report, writer, [...wheels, ...rails]);
    if (anyPointTraced(report)) {
      writer.heading('Switch points');
      pointDrawings(report, writer);
    }
    writer.heading('Contact between wheels and rails');
    contactDrawings(report, writer);
    writer.heading('Wear over the distance run');
    wearDrawings(report, writer);
  },
};
