import { explanationOf } from '../../explanations';
import { factOf } from '../../explanations/facts';
import type { NotLooked } from '../../explanations/argument';
import type { Report, Section } from '../report';
import type { Table } from '../table/table';
import { faint, join } from '../type/inline';
import { KEY_INPUT_NAMES } from '../pieces/key-input-names';

const row = (item: NotLooked) => ({
  cells: [
    join(
      item.name,
      item.missing.length === 0
        ? ''
        : [faint(`\nMissing: ${item.missing.map((id) => KEY_INPUT_NAMES[id]).join('; ')}`)],
    ),
    factOf(item.fact).name,
    item.betweenTopTwo.toFixed(1),
    item.most.toFixed(1),
    item.mostBetween.map((id) => explanationOf(id).name.toLowerCase()).join(' and '),
  ],
});

const table = ({ argument }: Report): Table => ({
  columns: [
    { head: 'Not looked for or not measured' },
    { head: 'For the fact' },
    { head: 'First two, decibans', align: 'right', width: 62 },
    { head: 'Most, decibans', align: 'right', width: 62 },
    { head: 'Most between' },
  ],
  rows: argument.lookNext.map(row),
});

export const notMeasuredSection: Section = {
  id: 'not-measured',
  title: 'What was not measured',
  kind: 'numbered',
  build(report, writer) {
    const missing = report.findings.filter(({ kind }) => kind === 'notMeasured');
    writer.text(
      'The list is drawn from every explanation, not only from the leading one. First comes what could be expected to move the first two explanations against each other most; beside it stands the pair it tells apart best.',
    );
    if (report.argument.lookNext.length === 0)
      writer.text('Every witness of every explanation has a record.');
    else writer.table('What would help most if it were still looked at', table(report));
    if (missing.length > 0) {
      writer.heading('Findings that could not be made');
      writer.list(
        missing.map((finding) => {
          const number = report.refs.ofFinding(finding.id) ?? '';
          const lacks = finding.kind === 'notMeasured' ? finding.missing : [];
          return [
            { text: finding.title },
            { text: ` [${number}]`, ink: 'link' as const, goTo: number },
            { text: lacks.length === 0 ? ': not measured.' : `: missing ${lacks.join('; ')}.` },
          ];
        }),
      );
    }
  },
};
