import { Form, Link } from '@remix-run/react';
import type { PreviewView } from '~/app/imports/preview.server';
import { Message } from '../Message';

function Problems({
  problems,
  more,
  caption,
}: {
  readonly problems: PreviewView['problems'];
  readonly more: number;
  readonly caption: string;
}) {
  return (
    <div className="table-wrap">
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">Row</th>
            <th scope="col">Column</th>
            <th scope="col">What to do</th>
          </tr>
        </thead>
        <tbody>
          {problems.map(({ row, column, message }, index) => (
            <tr key={index}>
              <td className="number">{row}</td>
              <td>{column}</td>
              <td>{message}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {more > 0 && <p className="soft">And {more} more.</p>}
    </div>
  );
}

function FirstRows({ header, rows }: Pick<PreviewView, 'header' | 'rows'>) {
  return (
    <div className="table-wrap" role="region" aria-label="First rows of the file" tabIndex={0}>
      <table className="small">
        <caption>First rows, as they stand in the file</caption>
        <thead>
          <tr>
            <th scope="col">Row</th>
            {header.map((label) => (
              <th key={label} scope="col">
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ row, cells }) => (
            <tr key={row}>
              <th scope="row">{row}</th>
              {cells.map((cell, index) => (
                <td key={index}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Channels({ channels }: Pick<PreviewView, 'channels'>) {
  return (
    <div className="table-wrap">
      <table className="as-cards">
        <caption>Channels</caption>
        <thead>
          <tr>
            <th scope="col">Channel</th>
            <th scope="col">In</th>
            <th scope="col">From, to</th>
            <th scope="col" className="number">
              Empty samples
            </th>
          </tr>
        </thead>
        <tbody>
          {channels.map(({ label, unit, range, empty }) => (
            <tr key={label}>
              <th scope="row">{label}</th>
              <td data-label="In">{unit || 'no unit'}</td>
              <td data-label="From, to">{range}</td>
              <td data-label="Empty samples" className="number">
                {empty}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

type Props = {
  readonly view: PreviewView;
  readonly refused?: string;
  /** Back to the columns, with everything that was chosen. */
  readonly backHref: string;
};

/** Third step: what would be recorded, and every row that cannot be. Nothing is in the case yet. */
export function ImportPreview({ view, refused, backHref }: Props) {
  const blocked = view.problems.length > 0;
  return (
    <div className="stack">
      {refused && <Message tone="bad">{refused}</Message>}
      {blocked ? (
        <Message tone="bad">
          Nothing is imported while a row is marked. Put the rows below right in the file and choose it again,
          or change what a column holds.
        </Message>
      ) : (
        <p>
          <strong>{view.summary}</strong> would be imported. Nothing is in the case yet.
        </p>
      )}
      {blocked && (
        <Problems
          problems={view.problems}
          more={view.moreProblems}
          caption="Rows that cannot be imported (the header is row 1)"
        />
      )}
      {view.questions.length > 0 && (
        <Problems
          problems={view.questions}
          more={view.moreQuestions}
          caption="Possible, but unusual: please look at these"
        />
      )}
      {view.notes.length > 0 && (
        <Message tone="care">
          <ul>
            {view.notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </Message>
      )}
      {view.channels.length > 0 && <Channels channels={view.channels} />}
      <FirstRows header={view.header} rows={view.rows} />
      <div className="row">
        {!blocked && (
          <Form method="post">
            <input type="hidden" name="intent" value="confirm" />
            <button className="button button--main">Import {view.summary}</button>
          </Form>
        )}
        <Link className="button" to={backHref}>
          Change the columns
        </Link>
      </div>
    </div>
  );
}
