import { standing } from '../../case/current';
import { SAFETY_POINTS } from '../../case/safety';
import { caseKind } from '../../case/kinds';
import type { Report, Section } from '../report';
import { INK } from '../type/inks';
import { breakLines, faint, type Inline } from '../type/inline';
import { localTime, utc } from '../words';
import type { Writer } from '../writer';

const text = (report: Report, id: string): string => String(report.record.fields[id] ?? '').trim();

/** How this printing of the report is named: case, state of the case, moment. */
export const documentId = ({ input, record }: Report): string =>
  `${String(record.fields.number ?? '')} · state ${input.logHead.slice(0, 12)} · ${input.generatedAt.slice(0, 10)}`;

function facts(report: Report): readonly (readonly [string, Inline])[] {
  const { record, input } = report;
  const where = [
    text(report, 'railroad'),
    text(report, 'subdivision'),
    text(report, 'milepost') && `milepost ${text(report, 'milepost')}`,
    text(report, 'track') && `track: ${text(report, 'track')}`,
  ];
  const when = text(report, 'occurredAt');
  const zone = text(report, 'timeZone');
  const investigators = standing(record, 'person')
    .filter(({ fields }) => fields.role === 'investigator')
    .map(({ fields }) => [fields.name, fields.organisation].filter(Boolean).join(', '));
  return [
    ['Case number', text(report, 'number')],
    [
      'Occurrence',
      when === '' ? [faint('time was not recorded')] : `${localTime(when)}${zone === '' ? '' : ` (${zone})`}`,
    ],
    ['Place', where.filter(Boolean).join('\n') || [faint('was not recorded')]],
    ['Investigator', investigators.join('\n') || [faint('was not recorded')]],
    ['Printed', `${utc(input.generatedAt)}, Flangemark ${input.version}`],
    [
      'State of the case',
      [
        { text: input.logHead.slice(0, 12), face: 'mono' },
        { text: '  (see “Document data” at the end for the whole hash and how to verify it)', ink: 'faint' },
      ],
    ],
  ];
}

function build(report: Report, writer: Writer): void {
  const { record } = report;
  writer.space(58);
  writer.text('Derailment investigation', { size: 11, ink: 'accent', face: 'bold', after: 10 });
  writer.text(text(report, 'title') || caseKind.describe(record.fields), {
    size: 25,
    face: 'bold',
    after: 8,
  });
  writer.text('Report of readings, findings and explanations considered', {
    size: 11.5,
    ink: 'faint',
    after: 40,
  });
  writer.pairs(facts(report));
  writer.space(30);
  const scope = SAFETY_POINTS.filter(({ title }) =>
    ['Results are aids to judgement', 'Who decides', 'What this is not'].includes(title),
  );
  const size = 8.4;
  const lead = size * 1.4;
  const pad = 12;
  const lines = breakLines(
    scope.flatMap(({ title, text: words }, i) => [
      { text: `${i === 0 ? '' : '\n'}${title}. `, face: 'bold' as const },
      { text: words },
    ]),
    writer.width() - 2 * pad,
    { size },
    writer.measure,
  );
  writer.block(lines.length * lead + 2 * pad, 'Note', null, (box) => {
    writer.panel(box, INK.accent);
    writer.lines(lines, box.x + pad, box.y + pad - 1, { size, lead });
  });
}

export const titleSection: Section = { id: 'title', title: 'Title page', kind: 'cover', build };
