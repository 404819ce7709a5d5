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
  last,
}: {
  readonly system: UnitSystem;
  readonly last?: readonly string[];
}) {
  return (
    <thead>
      <tr>
        {SHEET_COLUMNS.map((column) => {
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

/** The station sheet as it stands. Each station leads to its readings and to where they came from. */
export function StationTable({ caseId, rows, system, back }: Props) {
  const html = useMemo(() => {
    const returning = encodeURIComponent(back);
    return { __html: rowsHtml(rows, (id) => `/cases/${caseId}/records/station/${id}?back=${returning}`) };
  }, [caseId, rows, back]);
  return (
    <div className="station-sheet" role="region" aria-label="Station sheet" tabIndex={0}>
      <table>
        <SheetHead system={system} last={['Class met', 'Beyond a limit']} />
        <tbody dangerouslySetInnerHTML={html} />
      </table>
    </div>
  );
}
