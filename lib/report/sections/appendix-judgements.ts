import { EXPLANATIONS } from '../../explanations';
import { factOf } from '../../explanations/facts';
import {
  adjustJudgements,
  expectationPath,
  judgedOutcomes,
  judgementTable,
  TABLES,
  witnessPath,
} from '../../explanations/judgement-table';
import type { JudgementValues } from '../../explanations/judgements';
import type { Report, Section } from '../report';
import type { Row, Table } from '../table/table';
import { bold, faint, type Inline } from '../type/inline';
import { nameOfPerson, shortTime } from '../words';

type Values = { readonly values: JudgementValues; readonly changed: ReadonlySet<string> };

const shown = (path: string, delivered: number, { values, changed }: Values): Inline =>
  changed.has(path)
    ? [bold(String(values.get(path) ?? delivered)), faint(` (was ${delivered})`)]
    : String(values.get(path) ?? delivered);

function expectations(report: Report, values: Values): Table {
  return {
    columns: [
      { head: 'If this is what happened' },
      { head: 'Probability', align: 'right', width: 72 },
      { head: 'Reason' },
    ],
    rows: report.argument.facts
      .filter(({ recorded }) => recorded)
      .flatMap(({ fact }): Row[] => [
        { heads: true, cells: [factOf(fact).name] },
        ...EXPLANATIONS.map((explanation): Row => {
          const { probability, reason } = explanation.expectations[fact];
          return {
            cells: [
              explanation.name,
              shown(expectationPath(explanation.id, fact), probability, values),
              reason,
            ],
          };
        }),
      ]),
  };
}

function witnesses(report: Report, values: Values): Table {
  const used = new Set(
    report.argument.facts.flatMap((fact) =>
      fact.witnesses.filter(({ state }) => state.kind !== 'notLooked').map(({ witness }) => witness),
    ),
  );
  return {
    columns: [
      { head: 'Witness' },
      { head: 'Outcome' },
      { head: 'How often, when the fact holds', align: 'right', width: 70 },
      { head: 'when it does not', align: 'right', width: 70 },
      { head: 'Reason' },
    ],
    rows: TABLES.facts.flatMap((fact) => {
      const own = fact.witnesses.filter(({ id }) => used.has(id));
      if (own.length === 0) return [];
      return [
        { heads: true, cells: [fact.name] },
        ...own.flatMap((witness) =>
          judgedOutcomes(witness).map((outcome, i): Row => ({
            cells: [
              i === 0 ? witness.name : '',
              outcome.label,
              shown(witnessPath(witness.id, outcome.id, true), outcome.ifTrue, values),
              shown(witnessPath(witness.id, outcome.id, false), outcome.ifFalse, values),
              i === 0 ? witness.reason : '',
            ],
          })),
        ),
      ];
    }),
  };
}

const changes = ({ record, input }: Report): Table => ({
  columns: [
    { head: 'Judgement' },
    { head: 'From', align: 'right' },
    { head: 'To', align: 'right' },
    { head: 'Reason' },
    { head: 'By, when' },
  ],
  rows: input.assessment.adjustedBy.map((change) => ({
    cells: [
      change.what,
      String(change.from),
      String(change.to),
      change.reason,
      [nameOfPerson(record, change.personId) ?? 'not named', shortTime(change.at)].join(', '),
    ],
  })),
});

export const appendixJudgements: Section = {
  id: 'judgements',
  title: 'Judgement tables used',
  kind: 'appendix',
  startsPage: true,
  build(report, writer) {
    writer.text(
      'All these probabilities are engineering judgement, each with its reason. Printed are those of facts and witnesses with a record. They are not calibrated on many cases whose causes were settled otherwise.',
    );
    writer.heading('Changes made by the investigator');
    if (report.input.assessment.adjustedBy.length === 0) writer.text('None.');
    else writer.table('Judgements changed for this case', changes(report));
    if (report.input.assessment.refusedChanges.length > 0) {
      writer.list(
        report.input.assessment.refusedChanges.map(
          ({ path, value, message }) => `Not applied: ${path} to ${value}. ${message}`,
        ),
      );
    }
    const { values } = adjustJudgements(judgementTable(), report.record.judgementChanges);
    const changed = new Set(report.input.assessment.adjustedBy.map(({ path }) => path));
    const both = { values, changed };
    writer.heading('How expected each fact is');
    const expected = expectations(report, both);
    if (expected.rows.length === 0) writer.text('No fact has a record.');
    else writer.table('Probability of each fact under each explanation', expected);
    writer.heading('How well each witness shows its fact');
    const seen = witnesses(report, both);
    if (seen.rows.length === 0) writer.text('No witness has a record.');
    else writer.table('Probability of each outcome of a witness', seen);
    const rules = judgementTable().filter(({ group }) => group === 'rule');
    writer.heading('Rules of the weighing');
    writer.table('Rules', {
      columns: [{ head: 'Rule' }, { head: 'Value', align: 'right', width: 72 }, { head: 'Reason' }],
      rows: rules.map(({ path, what, value, reason }) => ({
        cells: [what, shown(path, value, both), reason],
      })),
    });
  },
};
