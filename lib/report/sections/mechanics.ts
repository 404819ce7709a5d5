import { absent } from '../pieces/absent';
import { mechanicsDrawings } from '../pieces/drawings';
import { findingsTable } from '../pieces/findings-table';
import type { Section } from '../report';

export const mechanicsSection: Section = {
  id: 'mechanics',
  title: 'What the readings come to',
  kind: 'numbered',
  build(report, writer) {
    const findings = report.findings.filter(({ part }) => part === 'mechanics');
    writer.text(
      'Forces, limits and margins at the POD, computed from the readings named beside each. They are quasi-static estimates with their uncertainty, aids to judgement and no more.',
    );
    if (findings.length === 0) absent(writer, 'What these need');
    else writer.table('Mechanics at the POD', findingsTable(findings, report));
    mechanicsDrawings(report, writer);
  },
};
