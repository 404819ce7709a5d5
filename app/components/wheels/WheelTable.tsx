import type { Paged } from '~/app/paging';
import type { WheelRow } from '~/app/wheels/view.server';
import { EntityTable, type TableColumn } from '../EntityTable';
import { Pager } from '../Pager';

type Props = {
  readonly of: Paged<WheelRow>;
  readonly what: 'wheelsets' | 'trucks';
  readonly param: string;
  readonly columns: readonly TableColumn[];
  readonly chosen: string | undefined;
  readonly empty: string;
};

/** Wheelsets or trucks, each leading to its readings further down. */
export function WheelTable({ of, what, param, columns, chosen, empty }: Props) {
  return (
    <>
      <EntityTable
        caption={what === 'wheelsets' ? 'Wheelsets' : 'Trucks'}
        nameLabel={what === 'wheelsets' ? 'Wheelset' : 'Truck'}
        columns={columns}
        rows={of.items.map((row) => ({
          ...row,
          href: `${row.href}#chosen`,
          current: row.id === chosen,
          cells: {
            ...row.cells,
            beyond: row.beyond > 0 && <span className="chip chip--bad">{row.beyond} beyond</span>,
          },
        }))}
        empty={empty}
      />
      <Pager of={of} param={param} what={what} />
    </>
  );
}
