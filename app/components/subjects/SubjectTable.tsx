import type { ReactNode } from 'react';
import type { SubjectRow } from '~/app/subjects/rows.server';
import type { Paged } from '~/app/paging';
import { EntityTable, type TableColumn } from '../EntityTable';
import { Pager } from '../Pager';

type Props = {
  readonly of: Paged<SubjectRow & { readonly beyond?: number }>;
  readonly what: string;
  readonly nameLabel: string;
  /** Name of the page number in the address. */
  readonly param?: string;
  readonly columns: readonly TableColumn[];
  readonly chosen: string | undefined;
  readonly empty: string;
};

/** Things of one kind, each leading to its readings further down; those that feed no finding are marked, and a column nobody filled is left away. */
export function SubjectTable({ of, what, nameLabel, param = 'page', columns, chosen, empty }: Props) {
  const rows = of.items.map(({ href, leftOut, beyond = 0, cells, ...row }) => ({
    ...row,
    href: `${href}#chosen`,
    current: row.id === chosen,
    cells: {
      ...cells,
      state: leftOut ? <span className="chip chip--care">{cells.state}</span> : cells.state,
      beyond: beyond > 0 && <span className="chip chip--bad">{beyond} beyond</span>,
    } as Readonly<Record<string, ReactNode>>,
  }));
  return (
    <>
      <EntityTable
        caption={what}
        nameLabel={nameLabel}
        columns={columns.filter(({ id }) => rows.some(({ cells }) => cells[id]))}
        rows={rows}
        empty={empty}
      />
      <Pager of={of} param={param} what={what.toLowerCase()} />
    </>
  );
}
