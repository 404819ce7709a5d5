import type { Argument, Ranked } from '../../explanations/argument';
import { plain, sentenceForChange, sentenceForNotLooked } from '../../explanations/sentences';
import { timesText, wordText } from '../../explanations/words';
import { sentenceRuns, decibansText } from '../pieces/sentence';
import type { Section } from '../report';
import type { Table } from '../table/table';
import { bold, faint, join, type Inline } from '../type/inline';
import { WEIGHING_NOTE } from '../pieces/weighing-note';

/** The summary is one page: of each list the most telling are shown, the sections have all. */
const MOST = 3;

const fewer = <T>(
  all: readonly T[],
  most: number,
  where: string,
  item: (each: T) => Inline,
): readonly Inline[] => [
  ...all.slice(0, most).map(item),
  ...(all.length > most ? [[faint(`and ${all.length - most} more: see “${where}”.`)]] : []),
];

export function orderTable(argument: Argument): Table {
  const background = (ranked: Ranked): boolean => ranked.explanation === 'somethingElse';
  return {
    columns: [
      { head: '', width: 18 },
      { head: 'Explanation' },
      { head: 'Against “something else”', align: 'right' },
      { head: 'In other words' },
    ],
    rows: argument.order.map((ranked, i) => {
      const pair = argument.pairs.find(
        ({ first, second }) =>
          (first === ranked.explanation && second === 'somethingElse') ||
          (second === ranked.explanation && first === 'somethingElse'),
      );
      const words =
        pair === undefined
          ? ''
          : pair.first === ranked.explanation
            ? `${wordText(pair.word)}${pair.capped ? ' (the strongest word used)' : ''}`
            : `the findings are ${timesText(pair.decibans)} probable if something else happened`;
      return {
        cells: [
          String(i + 1),
          ranked.name,
          background(ranked) ? [faint('the background')] : `${decibansText(ranked.decibans)} decibans`,
          background(ranked) ? [faint('how common the facts are where nothing came off')] : words,
        ],
      };
    }),
  };
}

export const summarySection: Section = {
  id: 'summary',
  title: 'Executive summary',
  kind: 'numbered',
  startsPage: true,
  build({ record, argument, refs }, writer) {
    const words = record.narrative.summary.trim();
    if (words === '') writer.text([faint('The investigator’s summary was not recorded.')]);
    else writer.text(words);

    writer.heading('Order of the explanations');
    writer.text(join([bold('What the evidence supports. ')], sentenceRuns(argument.verdict.sentence, refs)));
    writer.table('Explanations in the order in which the evidence supports them', orderTable(argument));

    const deciding = argument.whatWouldChange.deciding;
    writer.heading('What decides it');
    if (deciding.length === 0) {
      writer.text('No single reading, witness or fact, left out or turned round, would change the answer.');
    } else {
      writer.list(
        fewer(deciding, MOST, 'Explanations considered', (change) =>
          sentenceRuns(sentenceForChange(change), refs),
        ),
      );
    }
    if (argument.contradictions.length > 0) {
      writer.heading('Hard to square with it');
      writer.list(
        fewer(argument.contradictions, 2, 'Explanations considered', ({ sentence }) =>
          sentenceRuns(sentence, refs),
        ),
      );
    }
    writer.heading('What was not measured');
    if (argument.lookNext.length === 0) writer.text('Every witness of every explanation has a record.');
    else {
      writer.list(
        fewer(argument.lookNext, MOST, 'What was not measured', (item) => plain(sentenceForNotLooked(item))),
      );
    }
    writer.text([faint(WEIGHING_NOTE)], { size: 8 });
  },
};
