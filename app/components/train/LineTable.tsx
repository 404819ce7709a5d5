import { Link } from '@remix-run/react';
import type { LineQuantity, LineRowView } from '~/app/train/line.server';

type Props = {
  readonly caseId: string;
  readonly rows: readonly LineRowView[];
  /** The one whose readings are shown below. */
  readonly open: string | null;
  readonly hrefOf: (id: string) => string;
};

const COLUMNS: readonly { readonly id: LineQuantity; readonly label: string }[] = [
  { id: 'lineFrom', label: 'From the POD' },
  { id: 'lineTo', label: 'To' },
  { id: 'lineGrade', label: 'Grade' },
  { id: 'lineCurvature', label: 'Curvature' },
];

/** Grades and curves of the line in the order of distance. */
export function LineTable({ caseId, rows, open, hrefOf }: Props) {
  return (
    <div className="table-wrap">
      <table className="as-cards">
        <caption className="visually-hidden">Grades and curves of the line, by distance from the POD</caption>
        <thead>
          <tr>
            <th scope="col">Row</th>
            {COLUMNS.map(({ id, label }) => (
              <th key={id} scope="col" className="number">
                {label}
              </th>
            ))}
            <th scope="col">Hand</th>
            <th scope="col">Note</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row, index) => (
            <tr key={row.id} className={row.removed ? 'removed' : row.id === open ? 'current' : undefined}>
              <th scope="row">
                <Link
                  to={hrefOf(row.id)}
                  className="action-link"
                  prefetch="none"
                  aria-current={row.id === open ? 'true' : undefined}
                >
                  {row.name || `Row ${index + 1}`}
                </Link>
                {row.removed && <p className="small">Removed: {row.removed.reason}</p>}
              </th>
              {COLUMNS.map(({ id, label }) => {
                const reading = row.cells[id];
                return (
                  <td key={id} data-label={label} className="number">
                    {reading && <a href={`/cases/${caseId}/readings/${reading.id}`}>{reading.text}</a>}
                  </td>
                );
              })}
              <td data-label="Hand">{row.hand}</td>
              <td data-label="Note">{row.note}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
