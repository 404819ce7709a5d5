import { Link } from '@remix-run/react';
import type { ReactNode } from 'react';

export type TableColumn = { readonly id: string; readonly label: string; readonly number?: boolean };

export type TableRow = {
  readonly id: string;
  /** Names the row; stands in its first column. */
  readonly name: string;
  readonly href?: string;
  readonly cells: Readonly<Record<string, ReactNode>>;
  readonly removed?: { readonly reason: string } | null;
  /** The one that the page shows in full. */
  readonly current?: boolean;
};

type Props = {
  readonly caption: string;
  /** Heading of the first column. */
  readonly nameLabel: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly TableRow[];
  readonly empty: string;
};

/** Records as a table; on a phone each becomes a card. Give one page of rows at a time. */
export function EntityTable({ caption, nameLabel, columns, rows, empty }: Props) {
  if (rows.length === 0) return <p className="soft">{empty}</p>;
  return (
    <div className="table-wrap">
      <table className="as-cards">
        <caption className="visually-hidden">{caption}</caption>
        <thead>
          <tr>
            <th scope="col">{nameLabel}</th>
            {columns.map(({ id, label, number }) => (
              <th key={id} scope="col" className={number ? 'number' : undefined}>
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.id} className={row.removed ? 'removed' : row.current ? 'current' : undefined}>
              <th scope="row">
                {row.href ? (
                  <Link
                    to={row.href}
                    className="action-link"
                    prefetch="none"
                    aria-current={row.current ? 'true' : undefined}
                  >
                    {row.name}
                  </Link>
                ) : (
                  row.name
                )}
                {row.removed && <p className="small">Removed: {row.removed.reason}</p>}
              </th>
              {columns.map(({ id, label, number }) => (
                <td key={id} data-label={label} className={number ? 'number' : undefined}>
                  {row.cells[id]}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
