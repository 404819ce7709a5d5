import type { FeaturesView } from '~/app/traces/features.server';

/** The features of an outline with their uncertainty; one that could not be taken says why. */
export function FeatureTable({ features }: { readonly features: FeaturesView }) {
  if (!features.ok) {
    return (
      <p>
        <strong>Nothing could be taken from it.</strong> {features.problem}
      </p>
    );
  }
  return (
    <div className="table-wrap">
      <table className="as-cards">
        <caption className="visually-hidden">Features with expanded uncertainty</caption>
        <thead>
          <tr>
            <th scope="col">Feature</th>
            <th scope="col">Value ± U</th>
            <th scope="col">What it is</th>
          </tr>
        </thead>
        <tbody>
          {features.rows.map(({ id, name, meaning, text, missing }) => (
            <tr key={id}>
              <th scope="row">{name}</th>
              <td data-label="Value ± U">{text ?? <span className="soft">not taken: {missing}</span>}</td>
              <td data-label="What it is" className="small soft">
                {meaning}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
