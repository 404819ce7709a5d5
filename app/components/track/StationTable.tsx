import { useMemo } from 'react';
import { columnUnit, SHEET_COLUMNS } from '~/app/track/columns';
import { rowsHtml } from '~/app/track/rows-html';
import type { SheetRow } from '~/app/track/rows.server';
import type { UnitSystem } from '~/lib/readings/unit';

type Props = {
  readonly caseId: string;
  readonly rows: readonly SheetRow[];
  readonly system: UnitSystem;
  /** Page to come back to from the record of a station. */
  readonly back: string;
};

export function SheetHead({
  system,
  columns = SHEET_COLUMNS,
  last,
}: {
  readonly system: UnitSystem;
  readonly columns?: typeof SHEET_COLUMNS;
  readonly last?: readonly string[];
}) {
  return (
    <thead>
      <tr>
        {columns.map((column) => {
          const unit = columnUnit(column, system);
          return (
            <th key={column.id} scope="col" title={column.label}>
              {column.short}
              {unit && <small>{unit}</small>}
            </th>
          );
        })}
        {last?.map((heading) => (
          <th key={heading} scope="col">
            {heading}
          </th>
        ))}
      </tr>
    </thead>
  );
}

/** Station and place always, the others where something stands in them; all of them while there is nothing. */
function filled(rows: readonly SheetRow[]): readonly number[] {
  const all = SHEET_COLUMNS.map((_, index) => index);
  const some = all.filter((index) => index < 2 || rows.some(({ cells }) => cells[index]));
  return some.length > 2 ? some : all;
}

/** The station sheet as it stands, without the columns that are empty. Each station leads to its readings and to where they came from. */
export function StationTable({ caseId, rows, system, back }: Props) {
  const shown = useMemo(() => filled(rows), [rows]);
  const withPhotos = rows.some(({ photos }) => photos > 0);
  const html = useMemo(() => {
    const returning = encodeURIComponent(back);
    const narrowed = rows.map((row) => ({ ...row, cells: shown.map((index) => row.cells[index] ?? '') }));
    const href = (id: string): string => `/cases/${caseId}/records/station/${id}?back=${returning}`;
    return { __html: rowsHtml(narrowed, href, withPhotos) };
  }, [caseId, rows, shown, back, withPhotos]);
  return (
    <div className="station-sheet" role="region" aria-label="Station sheet" tabIndex={0}>
      <table>
        <SheetHead
          system={system}
          columns={SHEET_COLUMNS.filter((_, index) => shown.includes(index))}
          last={[...(withPhotos ? ['Photos'] : []), 'Class met', 'Beyond a limit']}
        />
        <tbody dangerouslySetInnerHTML={html} />
      </table>
    </div>
  );
}
