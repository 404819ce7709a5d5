import type { FindingTone } from '~/app/findings/view.server';
import type { GlanceCell, GlanceRow } from '~/app/subjects/glance';

const CLASS: Readonly<Record<FindingTone, string | undefined>> = {
  good: undefined,
  plain: undefined,
  bad: 'chip chip--bad',
  care: 'soft',
};

function Cell({ cell }: { readonly cell: GlanceCell | undefined }) {
  if (!cell) return null;
  return (
    <span className={CLASS[cell.tone]}>
      {cell.value}
      {cell.tone === 'bad' && cell.value !== 'Fails' && ', beyond a limit'}
    </span>
  );
}

/** All that was found of one thing, on one line per kind; the same is told in full with its readings. */
export function GlanceTable({ rows, name }: { readonly rows: readonly GlanceRow[]; readonly name: string }) {
  if (rows.length === 0) return null;
  const sided = rows.some(({ cells }) => cells.some(({ place }) => place !== ''));
  const at = (cells: readonly GlanceCell[], place: string) => cells.find((cell) => cell.place === place);
  return (
    <div className="stack glance">
      <div className="table-wrap">
        <table>
          <caption className="visually-hidden">What was found of {name}</caption>
          <thead>
            <tr>
              <th scope="col">Found</th>
              {sided && <th scope="col">Left</th>}
              {sided && <th scope="col">Right</th>}
              {!sided && <th scope="col">Value</th>}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ label, cells }) => {
              const both = at(cells, '');
              return (
                <tr key={cells[0]?.id}>
                  <th scope="row">{label}</th>
                  {both ? (
                    <td colSpan={sided ? 2 : 1}>
                      <Cell cell={both} />
                    </td>
                  ) : (
                    <>
                      <td>
                        <Cell cell={at(cells, 'Left')} />
                      </td>
                      <td>
                        <Cell cell={at(cells, 'Right')} />
                      </td>
                    </>
                  )}
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      <p className="small soft">
        ± is the expanded uncertainty, k = 2. Where each comes from stands with its readings.
      </p>
    </div>
  );
}
