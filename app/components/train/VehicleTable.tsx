import { Link } from '@remix-run/react';
import type { VehicleRow } from '~/app/train/rows.server';

type Props = {
  readonly caseId: string;
  readonly rows: readonly VehicleRow[];
  /** The one whose readings are shown below. */
  readonly open: string | null;
  /** The address of a vehicle's readings, given its id. */
  readonly hrefOf: (id: string) => string;
};

function Read({ caseId, reading }: { readonly caseId: string; readonly reading: VehicleRow['weight'] }) {
  // Plain links: eighty that the page's scripts prepare would cost more than the rest of the table.
  return reading && <a href={`/cases/${caseId}/readings/${reading.id}`}>{reading.text}</a>;
}

/** The train as a table, head end first; the first vehicle to derail is marked. */
export function VehicleTable({ caseId, rows, open, hrefOf }: Props) {
  return (
    <div className="table-wrap">
      <table className="as-cards vehicles">
        <caption className="visually-hidden">Vehicles from the head end</caption>
        <thead>
          <tr>
            <th scope="col">Vehicle</th>
            <th scope="col">Type</th>
            <th scope="col">Load</th>
            <th scope="col" className="number">
              Gross weight
            </th>
            <th scope="col" className="number">
              Length
            </th>
            <th scope="col" className="number">
              Behind it
            </th>
            <th scope="col">Derailed</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.id} className={row.removed ? 'removed' : row.id === open ? 'current' : undefined}>
              <th scope="row">
                <Link
                  to={hrefOf(row.id)}
                  className="action-link"
                  prefetch="none"
                  aria-current={row.id === open ? 'true' : undefined}
                >
                  {row.name}
                </Link>
                {row.removed && <p className="small">Removed: {row.removed.reason}</p>}
              </th>
              <td data-label="Type">{row.type}</td>
              <td data-label="Load">{row.load}</td>
              <td data-label="Gross weight" className="number">
                <Read caseId={caseId} reading={row.weight} />
              </td>
              <td data-label="Length" className="number">
                <Read caseId={caseId} reading={row.length} />
              </td>
              <td data-label="Behind it" className="number">
                {row.behind}
              </td>
              <td data-label="Derailed">
                {row.first && <strong className="chip chip--bad">First to derail</strong>}
                {row.first && row.derailed && ' '}
                {row.derailed}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
