import type { Argument, Ranked } from '../../explanations/argument';
import { plain, sentenceForChange, sentenceForNotLooked } from '../../explanations/sentences';
import { timesText, wordText } from '../../explanations/words';
import { sentenceRuns, decibansText } from '../pieces/sentence';
import type { Section } from '../report';
import type { Table } from '../table/table';
import { bold, faint, join, type Inline } from '../type/inline';
import { WEIGHING_NOTE } from '../pieces/weighing-note';
import type { Writer } from '../writer';

/** The summary is one page: of each list the most telling are shown, the sections have all. */
const MOST = [3, 2, 1] as const;
const ITEM_GAP = 2;
const HEADING = 27;
/** Room for the note that ends the page. */
const NOTE = 34;

type Listed = { readonly heading: string; readonly all: readonly Inline[]; readonly where: string };

const fewer = ({ all, where }: Listed, most: number): readonly Inline[] => [
  ...all.slice(0, most),
  ...(all.length > most ? [[faint(`and ${all.length - most} more: see “${where}”.`)]] : []),
];

/** As many of each list as the page still holds above `below` points; one at least. */
function fitting(lists: readonly Listed[], below: number, writer: Writer): number {
  const height = (most: number): number =>
    lists.reduce(
      (sum, list) =>
        fewer(list, most).reduce(
          (tall, item) => tall + writer.linesOf(item) * writer.lineHeight + ITEM_GAP,
          sum + HEADING,
        ),
      below,
    );
  return MOST.find((most) => height(most) <= writer.room()) ?? 1;
}

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

    const { deciding } = argument.whatWouldChange;
    const lists: readonly Listed[] = [
      {
        heading: 'What decides it',
        all:
          deciding.length === 0
            ? ['No single reading, witness or fact, left out or turned round, would change the answer.']
            : deciding.map((change) => sentenceRuns(sentenceForChange(change), refs)),
        where: 'Explanations considered',
      },
      {
        heading: 'Hard to square with it',
        all: argument.contradictions.map(({ sentence }) => sentenceRuns(sentence, refs)),
        where: 'Explanations considered',
      },
      {
        heading: 'What was not measured',
        all:
          argument.lookNext.length === 0
            ? ['Every witness of every explanation has a record.']
            : argument.lookNext.map((item) => plain(sentenceForNotLooked(item))),
        where: 'What was not measured',
      },
    ].filter(({ all }) => all.length > 0);
    const most = fitting(lists, NOTE, writer);
    for (const list of lists) {
      writer.heading(list.heading);
      writer.list(fewer(list, most));
    }
    writer.text([faint(WEIGHING_NOTE)], { size: 8 });
  },
};
