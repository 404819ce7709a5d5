import { Link, useRevalidator } from '@remix-run/react';
import { useEffect } from 'react';
import type { TraceList, TraceRow } from '~/app/traces/list.server';
import { Sheet } from '../Sheet';

const LOOK_AGAIN_MS = 1000;

function Numbers({ numbers, problem }: TraceRow) {
  if (problem !== null) return <span className="soft">{problem}</span>;
  if (numbers === null) return <span className="soft">Being computed; load the page again.</span>;
  if (numbers.length === 0) return <span className="soft">none could be taken</span>;
  return (
    <ul className="plain-list">
      {numbers.map(({ name, text }) => (
        <li key={name}>
          {name} {text}
        </li>
      ))}
    </ul>
  );
}

/** Outlines of the wheelset, rail or turnout that is shown, and where to add one. */
export function TraceSheet({ list: { rows, add, use } }: { readonly list: TraceList }) {
  const { revalidate } = useRevalidator();
  const pending = rows.some(({ numbers, removed }) => numbers === null && removed === null);
  useEffect(() => {
    if (!pending) return;
    const again = setInterval(revalidate, LOOK_AGAIN_MS);
    return () => clearInterval(again);
  }, [pending, revalidate]);
  return (
    <Sheet
      title="Outlines"
      id="outlines"
      aside={add.map(({ href, label }) => (
        <Link key={href} to={href} className="button button--small">
          {label}
        </Link>
      ))}
    >
      {rows.length === 0 ? (
        <p className="soft">None yet. {use}</p>
      ) : (
        <div className="table-wrap">
          <table className="as-cards">
            <caption className="visually-hidden">Outlines</caption>
            <thead>
              <tr>
                <th scope="col">Outline</th>
                <th scope="col">Taken from it</th>
                <th scope="col">How it was made</th>
                <th scope="col">When</th>
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <tr key={row.id} className={row.removed === null ? undefined : 'removed'}>
                  <th scope="row">
                    <Link to={row.href}>{row.name}</Link>
                    {row.removed !== null && <span className="small"> removed: {row.removed}</span>}
                  </th>
                  <td data-label="Taken from it">{row.removed === null && <Numbers {...row} />}</td>
                  <td data-label="How it was made" className="small">
                    {row.made}
                  </td>
                  <td data-label="When">{row.takenAt}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </Sheet>
  );
}
