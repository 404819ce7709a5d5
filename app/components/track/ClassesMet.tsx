import { Pager } from '~/app/components/Pager';
import type { ClassesView } from '~/app/track/classes.server';

/** The highest class the stations meet, and the limits of the class in force they do not. */
export function ClassesMet({ inForce, counts, others, exceptions }: ClassesView) {
  return (
    <>
      {counts.length > 0 && (
        <p>
          Highest class met, by station, as far as each was read:{' '}
          {counts.map(({ label, count }) => `${label} at ${count}`).join(', ')}. Each condition is taken
          alone.
        </p>
      )}
      {others.length > 0 && <p>{others.map(({ name, highest }) => `${name}: ${highest}`).join('; ')}.</p>}
      {inForce !== '' && exceptions.total === 0 && <p>Nothing lies beyond a limit of {inForce}.</p>}
      {exceptions.total > 0 && (
        <>
          <div className="table-wrap" role="region" aria-label="Exceptions" tabIndex={0}>
            <table>
              <caption>Exceptions to {inForce}</caption>
              <thead>
                <tr>
                  <th scope="col">Where</th>
                  <th scope="col">What</th>
                  <th scope="col">Section</th>
                  <th scope="col">Found</th>
                  <th scope="col">Limit</th>
                  <th scope="col">Excess</th>
                  <th scope="col">Chance of being beyond it</th>
                </tr>
              </thead>
              <tbody>
                {exceptions.items.map((row) => (
                  <tr key={row.key}>
                    <th scope="row">{row.place}</th>
                    <td>
                      <a href={row.href}>{row.what}</a>
                    </td>
                    <td>{row.section}</td>
                    <td>{row.reading}</td>
                    <td>{row.limit}</td>
                    <td>{row.excess}</td>
                    <td>{row.chance}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          <Pager of={exceptions} param="exceptions" what="exceptions" />
        </>
      )}
    </>
  );
}
