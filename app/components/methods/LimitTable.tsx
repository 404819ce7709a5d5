import { RULE_QUANTITIES } from '~/lib/rules/rule-quantity';
import type { RuleLimit, RuleSet } from '~/lib/rules/rule-set';
import { fromCanonical } from '~/lib/readings/convert';

/** What must hold before the limit does, besides the class. */
function only(limit: RuleLimit): string {
  const { unbalanceOverMm, onlyIf, notIf, onlyWhere } = limit;
  const over =
    unbalanceOverMm === undefined
      ? ''
      : `only above ${fromCanonical(unbalanceOverMm, 'in', 'crossLength')} in of qualified cant deficiency`;
  const said = [onlyIf && 'only where so answered', notIf && 'not where answered otherwise'];
  return [over, ...said, onlyWhere]
    .filter(Boolean)
    .map((text) => `; ${text}`)
    .join('');
}

/** The limits of a rule set as the rule prints them, one column per class. */
export function LimitTable({ set }: { readonly set: RuleSet }) {
  return (
    <div className="table-wrap" role="region" aria-label={`Limits of ${set.name}`} tabIndex={0}>
      <table>
        <caption className="visually-hidden">Limits of {set.name}</caption>
        <thead>
          <tr>
            <th scope="col">Limit</th>
            {set.classes.map(({ id, label }) => (
              <th scope="col" key={id}>
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {set.limits.map((limit) => (
            <tr key={limit.id}>
              <th scope="row">
                {RULE_QUANTITIES[limit.quantity].name}
                <p className="small soft">
                  {limit.citation}: {limit.sense === 'max' ? 'at most' : 'at least'}
                  {limit.applies === 'both' ? '' : `, on ${limit.applies}`}
                  {only(limit)}
                  {limit.source.status !== 'published' && ` (${limit.source.status})`}
                  {limit.from !== undefined && `. From: ${limit.from}`}
                </p>
              </th>
              {set.classes.map(({ id }) => (
                <td key={id} className="number">
                  {limit.asPrinted[id] ?? '–'}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
