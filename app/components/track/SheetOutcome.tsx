import type { SheetRow } from '~/app/track/rows.server';
import { SHEET_COLUMNS } from '~/app/track/columns';
import type { SheetAnswer, SheetCounts } from '~/app/track/save-sheet.server';
import { Message } from '../Message';

const count = (n: number, one: string, many: string): string =>
  n === 0 ? '' : `${n} ${n === 1 ? one : many}`;

/** "3 new stations, 12 new readings, 2 changes". */
export const countsText = ({ stations, readings, changed }: SheetCounts): string =>
  [
    count(stations, 'new station', 'new stations'),
    count(readings, 'new reading', 'new readings'),
    count(changed, 'change', 'changes'),
  ]
    .filter(Boolean)
    .join(', ');

function placeOf(cell: string, rows: readonly SheetRow[]): string {
  const [, row = '', column = ''] = cell.split(':');
  const label = SHEET_COLUMNS.find(({ id }) => id === column)?.label ?? column;
  const station = rows.find(({ id }) => id === row)?.name;
  return `${station === undefined ? `New row ${row.slice(1)}` : `Station ${station}`}, ${label.toLowerCase()}`;
}

/** What became of the sheet that was just sent. */
export function SheetOutcome({
  answer,
  rows,
}: {
  readonly answer: SheetAnswer;
  readonly rows: readonly SheetRow[];
}) {
  const { counts, errors, questions } = answer;
  const saved = countsText(counts);
  const wrong = Object.entries(errors).filter(([name]) => name.startsWith('cell:'));
  const shared = Object.entries(errors).filter(([name]) => !name.startsWith('cell:'));
  return (
    <>
      {saved && <Message tone="good">{saved}.</Message>}
      {questions.length > 0 && (
        <Message tone="care">
          Kept, but unusual:
          <ul>
            {questions.map((question) => (
              <li key={question}>{question}</li>
            ))}
          </ul>
        </Message>
      )}
      {wrong.length + shared.length > 0 && (
        <Message tone="bad">
          What you entered still stands in its box; put right:
          <ul>
            {shared.map(([name, message]) => (
              <li key={name}>
                <a href={name === 'takenAt' ? '#sheet-at' : '#sheet-reason'}>
                  {name === 'takenAt' ? 'When' : 'Reason'}
                </a>
                : {message}
              </li>
            ))}
            {wrong.map(([cell, message]) => (
              <li key={cell}>
                <a href={`#${cell}`}>{placeOf(cell, rows)}</a>: {message}
              </li>
            ))}
          </ul>
        </Message>
      )}
      {!saved && wrong.length + shared.length + questions.length === 0 && (
        <Message tone="care">Nothing in the sheet was changed.</Message>
      )}
    </>
  );
}
