import { standing } from '../../case/current';
import { KINDS } from '../../case/kinds';
import { absent } from '../pieces/absent';
import { findingsTable } from '../pieces/findings-table';
import { pointSectionDrawing } from '../pieces/point-drawing';
import { readingsTable } from '../pieces/readings-table';
import type { Section } from '../report';
import { fieldOf } from '../words';

export const turnoutSection: Section = {
  id: 'turnout',
  title: 'Turnout',
  kind: 'numbered',
  build(report, writer) {
    const { record } = report;
    const turnouts = standing(record, 'turnout');
    if (turnouts.length === 0) {
      absent(writer, 'A turnout');
      writer.text('Whether one lies near the POD is for the account of the site to say.');
    }
    for (const turnout of turnouts) {
      writer.lead(KINDS.turnout.describe(turnout.fields));
      writer.pairs(
        KINDS.turnout.fields.flatMap((field) => {
          const text = field.id === 'name' ? '' : fieldOf(record, 'turnout', turnout, field.id);
          return text === '' ? [] : [[field.label, text] as const];
        }),
      );
      const readings = report.readingsOf({ kind: 'turnout', id: turnout.id });
      if (readings.length === 0) writer.text('No reading of it was recorded.');
      else
        writer.table(`Readings: ${KINDS.turnout.describe(turnout.fields)}`, readingsTable(readings, report));
      pointSectionDrawing(report, writer, turnout.id);
    }
    const findings = report.findings.filter(({ part }) => part === 'turnout');
    if (findings.length > 0) writer.table('Findings on the turnout', findingsTable(findings, report));
  },
};
