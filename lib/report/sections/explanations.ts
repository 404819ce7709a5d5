import type { Argument, FactWeight, OtherState, Ranked } from '../../explanations/argument';
import { explanationOf } from '../../explanations';
import { factOf } from '../../explanations/facts';
import { OTHER_EXPLANATIONS } from '../../explanations/others';
import type { ExplanationId } from '../../explanations/explanation';
import { sentenceForChange, sentenceForFact, sentenceForWitness } from '../../explanations/sentences';
import { findQuantity } from '../../readings/quantities';
import { argumentDrawing } from '../pieces/drawings';
import { findingValue } from '../pieces/findings-table';
import { decibansText, sentenceRuns } from '../pieces/sentence';
import { WEIGHING_NOTE } from '../pieces/weighing-note';
import type { Report, Section } from '../report';
import type { Table } from '../table/table';
import { bold, faint, join, runsOf, type Inline, type Run } from '../type/inline';
import { nameOfPerson, shortTime } from '../words';
import type { Writer } from '../writer';
import { orderTable } from './summary';

/** A fact that moves an explanation by less than this is not listed for or against it, decibans. */
const COUNTS = 0.5;

/** Every fact: what bears on it, in which of the four states, and what that says of the fact. */
function factsTable({ argument, refs }: Report): Table {
  return {
    columns: [
      { head: 'Fact', width: 128 },
      { head: 'What bears on it, and what there is of it' },
      { head: 'Speaks for the fact', align: 'right', width: 58 },
    ],
    rows: argument.facts.map((weight) => {
      const silent = weight.witnesses.filter(({ state }) => state.kind === 'notLooked');
      const rest = weight.witnesses.filter(({ state }) => state.kind !== 'notLooked');
      const lines: Run[] = rest.flatMap((witness, i) => [
        { text: i === 0 ? '' : '\n' },
        ...sentenceRuns(sentenceForWitness(witness, witness.name), refs),
        ...(Math.abs(witness.forFact) >= 0.05 ? [faint(` (${decibansText(witness.forFact)})`)] : []),
        ...witness.remarks.map((remark) => faint(` ${remark}`)),
      ]);
      const none: Run[] =
        silent.length === 0
          ? []
          : [
              faint(
                `${rest.length === 0 ? '' : '\n'}Not looked for: ${silent.map(({ name }) => lower(name)).join('; ')}.`,
              ),
            ];
      return {
        cells: [
          join([bold(weight.name)], [faint(`\n${factOf(weight.fact).definition}`)]),
          [...lines, ...none],
          weight.recorded ? decibansText(weight.forFact) : [faint('nothing known')],
        ],
      };
    }),
  };
}

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** For and against one explanation, measured against the background, strongest first. */
function forAndAgainst(facts: readonly FactWeight[], id: ExplanationId): readonly (readonly FactWeight[])[] {
  const size = (weight: FactWeight): number => weight.against[id];
  const counted = facts.filter((weight) => Math.abs(size(weight)) >= COUNTS);
  return [
    counted.filter((weight) => size(weight) > 0).sort((a, b) => size(b) - size(a)),
    counted.filter((weight) => size(weight) < 0).sort((a, b) => size(a) - size(b)),
  ];
}

function oneExplanation(ranked: Ranked, report: Report, writer: Writer): void {
  const { argument, refs } = report;
  const explanation = explanationOf(ranked.explanation);
  writer.heading(ranked.name);
  writer.text(explanation.description);
  const pair = argument.pairs.find(
    ({ first, second }) =>
      (first === ranked.explanation && second === 'somethingElse') ||
      (second === ranked.explanation && first === 'somethingElse'),
  );
  if (pair !== undefined) writer.text(sentenceRuns(pair.sentence, refs));
  const [inFavour = [], against = []] = forAndAgainst(argument.facts, ranked.explanation);
  const item = (weight: FactWeight): Inline =>
    join(sentenceRuns(sentenceForFact(weight), refs), [
      bold(` ${decibansText(weight.against[ranked.explanation])} decibans`),
    ]);
  writer.lead('Speaks for it');
  if (inFavour.length === 0)
    writer.text('Nothing on record, beyond what is as common where nothing came off.');
  else writer.list(inFavour.map(item));
  writer.lead('Speaks against it');
  if (against.length === 0) writer.text('Nothing on record.');
  else writer.list(against.map(item));
  const standing = argument.standings.find((each) => each.explanation === ranked.explanation);
  if (standing !== undefined && standing.standing !== 'notSaid') {
    writer.text([
      bold(
        standing.standing === 'stands'
          ? 'The investigator lets it stand. '
          : 'The investigator excludes it. ',
      ),
      { text: standing.reason },
    ]);
  }
}

function coverageTable(argument: Argument): Table {
  return {
    columns: [
      { head: 'Explanation' },
      { head: 'Witnesses with a record', align: 'right' },
      { head: 'of', align: 'right' },
    ],
    rows: argument.coverage.map(({ explanation, recorded, of }) => ({
      cells: [explanationOf(explanation).name, String(recorded), String(of)],
    })),
  };
}

const STATES: Readonly<Record<OtherState['state'], string>> = {
  excluded: 'Excluded',
  stands: 'Left standing',
  notConsidered: 'Not considered',
};

function othersTable(report: Report): Table {
  const { argument, record, refs } = report;
  return {
    columns: [
      { head: 'Explanation', width: 108 },
      { head: 'State', width: 66 },
      { head: 'Reason, and what was seen' },
      { head: 'Not looked at' },
    ],
    rows: argument.others.map((other) => {
      const about = OTHER_EXPLANATIONS.find(({ id }) => id === other.id);
      const by = [nameOfPerson(record, other.personId) ?? '', other.at === null ? '' : shortTime(other.at)]
        .filter(Boolean)
        .join(', ');
      return {
        cells: [
          join([bold(other.name)], [faint(`\n${about?.description ?? ''}`)]),
          STATES[other.state],
          [
            {
              text:
                other.state === 'notConsidered'
                  ? 'Neither excluded with a reason nor left standing.'
                  : other.reason,
            },
            ...(by === '' ? [] : [faint(` (${by})`)]),
            ...other.seen.flatMap(({ question, reading }): Run[] => [
              { text: `\nSeen: ${question}` },
              ...refs.citeRefs([{ kind: 'reading', id: reading }]),
            ]),
            ...report.findings
              .filter(({ what }) => about?.findings.includes(what))
              .flatMap((finding): Run[] => [
                faint(`\n${finding.title}: `),
                ...runsOf(findingValue(finding, report)),
                ...refs.citeRefs([{ kind: 'finding', id: finding.id }]),
              ]),
          ],
          [faint(other.notLooked.map((id) => findQuantity(id)?.name ?? id).join('; ') || '–')],
        ],
      };
    }),
  };
}

export const explanationsSection: Section = {
  id: 'explanations',
  title: 'Explanations considered',
  kind: 'numbered',
  startsPage: true,
  build(report, writer) {
    const { argument, refs, input } = report;
    writer.text(join([bold('What the evidence supports. ')], sentenceRuns(argument.verdict.sentence, refs)));
    writer.text([faint(WEIGHING_NOTE)], { size: 8 });
    writer.table('Order of the explanations', orderTable(argument));
    writer.heading('The leading explanation against each of the others');
    writer.list(
      argument.pairs
        .filter(({ first }) => first === argument.order[0]?.explanation)
        .map(({ sentence }) => sentenceRuns(sentence, refs)),
    );
    for (const caveat of argument.caveats) writer.text(sentenceRuns(caveat, refs));
    argumentDrawing(report, writer);

    writer.heading('What the evidence says of each fact');
    writer.anchorNext('facts');
    writer.table(
      'Facts and their witnesses; numbers are decibans for the fact against its opposite',
      factsTable(report),
    );

    for (const ranked of argument.order) {
      if (ranked.explanation !== 'somethingElse') oneExplanation(ranked, report, writer);
    }

    writer.heading('Contradictions');
    if (argument.contradictions.length === 0) {
      writer.text('No fact on record is hard to square with the leading explanation.');
    } else writer.list(argument.contradictions.map(({ sentence }) => sentenceRuns(sentence, refs)));

    writer.heading('What would change the answer');
    const { deciding, widened } = argument.whatWouldChange;
    if (deciding.length === 0) {
      writer.text('No single reading, witness or fact, left out or turned round, would change the answer.');
    } else writer.list(deciding.map((change) => sentenceRuns(sentenceForChange(change), refs)));
    writer.text(
      `With every judgement moved by up to a factor of two, ${widened.draws} times over, the leader stays ahead in ${Math.round(widened.staysAhead * 100)} of 100 draws; its lead lies between ${decibansText(widened.lead[0])} and ${decibansText(widened.lead[2])} decibans in eight of ten, ${decibansText(widened.lead[1])} in the middle.`,
    );
    if (input.assessment.adjustedBy.length > 0) {
      const before = input.assessment.baseline;
      writer.text(
        `Judgements were changed by the investigator (appendix C). With the tables as delivered the order would be: ${before.order
          .map(({ name, decibans }) => `${name.toLowerCase()} ${decibansText(decibans)}`)
          .join(', ')}.`,
      );
    }

    writer.heading('Other explanations');
    writer.text(
      'Not weighed by number: each is excluded with a reason or left standing. One that is not considered stays possible.',
      { leadsTo: true },
    );
    writer.table('Other explanations', othersTable(report));

    writer.heading('How evenly it was looked into');
    writer.table('Witnesses with a record, for each explanation’s own facts', coverageTable(argument));
    if (argument.lopsided !== null) writer.text(sentenceRuns(argument.lopsided, refs));
  },
};
