import type { BesideView } from '~/app/track/railroad-limits.server';

const WORDS = {
  stricter: 'stricter',
  looser: 'looser',
  same: 'the same',
  dropped: 'none of its own',
  alone: 'no such limit in the base',
} as const;

/** The railroad's own amounts beside those of the base set: shown, and not decided. */
export function BesideBase({ base, rows }: BesideView) {
  if (rows.length === 0) return <p>None of these limits is on anything {base} limits.</p>;
  return (
    <>
      <p>
        Beside {base}, class by class. Which of the two counts is not decided here: the readings are held
        against the railroad’s own line where it has one, and a law that allows less stays in force.
      </p>
      <div className="table-wrap" role="region" aria-label="Beside the base set" tabIndex={0}>
        <table>
          <caption className="visually-hidden">The railroad’s own limits beside the base set</caption>
          <thead>
            <tr>
              <th scope="col">Limit</th>
              <th scope="col">Class</th>
              <th scope="col">Own</th>
              <th scope="col">Base</th>
              <th scope="col">Own is</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ key, what, section, classes, own, base: theirs, standing }) => (
              <tr key={key}>
                <th scope="row">
                  {what}
                  <p className="small soft">{section}</p>
                </th>
                <td>{classes}</td>
                <td className="number">{own}</td>
                <td className="number">{theirs}</td>
                <td>
                  {standing === 'looser' || standing === 'dropped' ? (
                    <strong>{WORDS[standing]}</strong>
                  ) : (
                    WORDS[standing]
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}
