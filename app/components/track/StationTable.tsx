import { Link } from '@remix-run/react';
import { columnUnit, SHEET_COLUMNS } from '~/app/track/columns';
import type { SheetRow } from '~/app/track/rows.server';
import type { UnitSystem } from '~/lib/readings/unit';

type Props = {
  readonly caseId: string;
  readonly rows: readonly SheetRow[];
  readonly system: UnitSystem;
  /** Page to come back to from the record of a station. */
  readonly back: string;
};

export function SheetHead({ system, last }: { readonly system: UnitSystem; readonly last?: string }) {
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
        {last && <th scope="col">{last}</th>}
      </tr>
    </thead>
  );
}

/** The station sheet as it stands. Each station leads to its readings and to where they came from. */
export function StationTable({ caseId, rows, system, back }: Props) {
  const returning = encodeURIComponent(back);
  return (
    <div className="station-sheet" role="region" aria-label="Station sheet" tabIndex={0}>
      <table>
        <SheetHead system={system} last="Beyond a limit" />
        <tbody>
          {rows.map(({ id, name, cells, beyond }) => (
            <tr key={id} id={`station-${id}`}>
              <th scope="row">
                <Link to={`/cases/${caseId}/records/station/${id}?back=${returning}`} prefetch="none">
                  {name || '(no name)'}
                </Link>
              </th>
              {cells.slice(1).map((text, index) => (
                <td key={index}>{text}</td>
              ))}
              <td className={beyond ? 'beyond' : undefined}>{beyond}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
