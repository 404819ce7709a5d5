import { caseKind } from '../../case/kinds';
import { absent } from '../pieces/absent';
import { readingsTable } from '../pieces/readings-table';
import type { Section } from '../report';
import { faint } from '../type/inline';
import { fieldText, NOT_RECORDED } from '../words';

const ELSEWHERE = new Set(['title', 'narrative', 'units']);

export const occurrenceSection: Section = {
  id: 'occurrence',
  title: 'The occurrence',
  kind: 'numbered',
  startsPage: true,
  build(report, writer) {
    const { record } = report;
    const narrative = String(record.fields.narrative ?? '').trim();
    writer.heading('As first reported');
    if (narrative === '') absent(writer, 'An account of what happened');
    else for (const paragraph of narrative.split(/\n+/)) writer.text(paragraph);
    writer.heading('Place and time');
    writer.pairs(
      caseKind.fields
        .filter(({ id }) => !ELSEWHERE.has(id))
        .map((field) => [
          field.label,
          fieldText(record, field, record.fields[field.id] ?? null) || [faint(NOT_RECORDED)],
        ]),
    );
    writer.heading('Conditions as read');
    const readings = report.readingsOf({ kind: 'case', id: record.id });
    if (readings.length === 0) absent(writer, 'Anything of speed, weather or rail temperature');
    else writer.table('Readings about the occurrence as a whole', readingsTable(readings, report));
  },
};
