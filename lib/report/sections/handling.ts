import { currentReadings, standing } from '../../case/current';
import { recorderChannel } from '../../case/recorder';
import { absent } from '../pieces/absent';
import { forceHistoryDrawing, recorderDrawing, trainProfileDrawing } from '../pieces/drawings';
import { findingsTable } from '../pieces/findings-table';
import type { Report, Section } from '../report';
import type { Table } from '../table/table';
import { mono } from '../type/inline';
import { enteredText, fieldOf, together } from '../words';

const runsTable = ({ record, refs }: Report): Table => ({
  columns: [
    { head: 'No.', width: 28 },
    { head: 'Run' },
    { head: 'File and SHA-256' },
    { head: 'Rows', align: 'right' },
    { head: 'Channels' },
    { head: 'Clock and note' },
  ],
  rows: record.recorderRuns.map((run) => ({
    anchor: refs.ofReading(run.id),
    faint: run.removed !== null,
    cells: [
      refs.ofReading(run.id) ?? '',
      [run.name, run.removed === null ? '' : `Removed: ${run.removed.reason}`].filter(Boolean).join('\n'),
      [{ text: `${run.fileName}\n` }, mono(run.sha256)],
      String(run.rows),
      Object.entries(run.channels)
        .map(([id, unit]) => `${recorderChannel(id)?.label ?? id}${unit === '1' ? '' : ` (${unit})`}`)
        .join(', '),
      [run.clockOffsetS === 0 ? '' : `Clock offset ${run.clockOffsetS} s.`, run.note]
        .filter(Boolean)
        .join(' '),
    ],
  })),
});

const LINE_QUANTITIES = ['lineFrom', 'lineTo', 'lineGrade', 'lineCurvature'] as const;

/** Grades and curves of the line as entered, in the order of distance. */
function lineTable(report: Report): Table {
  const { record, refs } = report;
  const rows = standing(record, 'lineStretch').map((entity) => {
    const readings = currentReadings(record).filter(
      ({ subject }) => subject.kind === 'lineStretch' && subject.id === entity.id,
    );
    return { entity, of: (quantity: string) => readings.findLast((each) => each.quantity === quantity) };
  });
  return {
    columns: [
      { head: 'Row' },
      { head: 'From the POD', align: 'right' },
      { head: 'To', align: 'right' },
      { head: 'Grade', align: 'right' },
      { head: 'Curvature', align: 'right' },
      { head: 'Hand and note' },
      { head: 'Readings' },
    ],
    rows: rows
      .sort((a, b) => (a.of('lineFrom')?.value ?? Infinity) - (b.of('lineFrom')?.value ?? Infinity))
      .map(({ entity, of }) => ({
        cells: [
          String(entity.fields.name ?? ''),
          ...LINE_QUANTITIES.map((quantity) => {
            const reading = of(quantity);
            return reading === undefined ? '' : together(enteredText(reading));
          }),
          [fieldOf(record, 'lineStretch', entity, 'hand'), String(entity.fields.note ?? '')]
            .filter(Boolean)
            .join('. '),
          refs.citeRefs(
            LINE_QUANTITIES.flatMap((quantity) => {
              const reading = of(quantity);
              return reading === undefined ? [] : [{ kind: 'reading' as const, id: reading.id }];
            }),
          ),
        ],
      })),
  };
}

export const handlingSection: Section = {
  id: 'handling',
  title: 'Train handling',
  kind: 'numbered',
  build(report, writer) {
    const findings = report.findings.filter(({ part }) => part === 'train');
    if (report.record.recorderRuns.length === 0) absent(writer, 'An event recorder');
    else {
      writer.text(
        'The recorder’s wheel diameter, its clock and the run-out after an emergency application shift the match of place and speed; the finding for speed at the POD says what was assumed.',
      );
      writer.table('Recorder files', runsTable(report));
    }
    if (standing(report.record, 'lineStretch').length > 0)
      writer.table('Grades and curves of the line, distances from the POD', lineTable(report));
    if (findings.length > 0)
      writer.table('Findings on the train and its handling', findingsTable(findings, report));
    trainProfileDrawing(report, writer);
    recorderDrawing(report, writer);
    forceHistoryDrawing(report, writer);
  },
};
