import { standing } from '../../case/current';
import type { Entity } from '../../case/record';
import { caseMarks } from '../../figures/case-marks';
import { absentMany } from '../pieces/absent';
import { markStripDrawing } from '../pieces/drawings';
import { readingsTable } from '../pieces/readings-table';
import type { Report, Section } from '../report';
import type { Table } from '../table/table';
import { faint, join, type Run } from '../type/inline';
import { enteredText, fieldOf, NOT_RECORDED } from '../words';

const AS_PLACE = new Set(['markStart', 'markEnd', 'markOffsetStart', 'markOffsetEnd']);

function span(report: Report, mark: Entity, from: string, to: string): readonly Run[] {
  const readings = report.readingsOf({ kind: 'mark', id: mark.id });
  return [from, to].flatMap((quantity, i): Run[] => {
    const reading = readings.findLast((each) => each.quantity === quantity);
    const number = reading === undefined ? undefined : report.refs.ofReading(reading.id);
    return [
      ...(i === 0 ? [] : [{ text: '\nto ' }]),
      reading === undefined ? faint('not read') : { text: enteredText(reading) },
      ...(number === undefined ? [] : [{ text: `  ${number}`, ink: 'link' as const, goTo: number }]),
    ];
  });
}

function marksTable(report: Report): Table {
  const { record } = report;
  const numbers = new Map(caseMarks(record).map(({ id, number }) => [id, number]));
  return {
    columns: [
      { head: 'Mark', align: 'right', width: 34 },
      { head: 'Kind, rail, appearance' },
      { head: 'Along the track from the POD' },
      { head: 'Across, from the gauge face' },
      { head: 'Description, and the wheel thought to have made it' },
    ],
    rows: standing(record, 'mark').map((mark) => {
      const text = (id: string): string => fieldOf(record, 'mark', mark, id);
      const number = numbers.get(mark.id) ?? 0;
      return {
        anchor: `mark-${number}`,
        cells: [
          String(number),
          join(
            [{ text: text('type') }],
            mark.fields.isPod === true ? [{ text: '\nFirst mark (POD)', face: 'bold', ink: 'accent' }] : [],
            `\n${text('rail')} rail\n${text('appearance')}`,
          ),
          span(report, mark, 'markStart', 'markEnd'),
          span(report, mark, 'markOffsetStart', 'markOffsetEnd'),
          [
            text('description'),
            text('madeBy') && `By: ${text('madeBy')}.`,
            text('walkedBackFt') && `Rails searched back of it: ${text('walkedBackFt')}.`,
            mark.fields.disturbance !== 'undisturbed' && text('disturbance')
              ? `State when read: ${text('disturbance').toLowerCase()}.`
              : '',
          ]
            .filter(Boolean)
            .join('\n'),
        ],
      };
    }),
  };
}

export const marksSection: Section = {
  id: 'marks',
  title: 'Point of derailment and marks',
  kind: 'numbered',
  startsPage: true,
  build(report, writer) {
    const { record } = report;
    const marks = standing(record, 'mark');
    if (marks.length === 0) return absentMany(writer, 'Marks on rails, ties or fastenings');
    const first = marks.find(({ fields }) => fields.isPod === true);
    const number = caseMarks(record).find(({ isPod }) => isPod)?.number;
    writer.text(
      first === undefined
        ? 'No mark is recorded as the first. Station 0 is then a place that was chosen, not found.'
        : `Mark ${number ?? '?'} is recorded as the first mark and defines station 0. The rails were searched back of it: ${
            fieldOf(record, 'mark', first, 'walkedBackFt') || NOT_RECORDED
          }. The first mark found is not always the first mark made.`,
    );
    markStripDrawing(report, writer);
    writer.table('Marks', marksTable(report));
    const others = marks.flatMap(({ id }) =>
      report.readingsOf({ kind: 'mark', id }).filter(({ quantity }) => !AS_PLACE.has(quantity)),
    );
    if (others.length > 0) {
      writer.heading('What was looked for');
      writer.table('Questions asked of the marks', readingsTable(others, report));
    }
  },
};
