import { answerLabel } from '~/lib/findings/rules/conditions';
import { quantityOf } from '~/lib/readings/quantities';
import type { RuleSet } from '~/lib/rules/rule-set';

/** What a rule set wants without giving a figure, by the answers that do not meet it. */
export function ConditionTable({ set }: { readonly set: RuleSet }) {
  const conditions = set.conditions ?? [];
  if (conditions.length === 0) return null;
  const labels = new Map(set.classes.map(({ id, label }) => [id, label]));
  return (
    <div className="table-wrap" role="region" aria-label={`Conditions of ${set.name}`} tabIndex={0}>
      <table>
        <caption>Wanted without a figure</caption>
        <thead>
          <tr>
            <th scope="col">Section</th>
            <th scope="col">What is wanted</th>
            <th scope="col">Asked as</th>
            <th scope="col">Not met by</th>
            <th scope="col">Holds for</th>
          </tr>
        </thead>
        <tbody>
          {conditions.map(({ id, citation, source, wants, quantity, notMet, classes }) => (
            <tr key={id}>
              <th scope="row">
                {citation}
                {source.status !== 'published' && ` (${source.status})`}
              </th>
              <td>{wants}</td>
              <td>{quantityOf(quantity).name}</td>
              <td>{notMet.map((answer) => answerLabel(quantity, answer)).join('; ')}</td>
              <td>{classes.map((each) => labels.get(each) ?? each).join(', ')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
