import type { FindingView } from '~/app/findings/view.server';
import { FindingLimits } from './FindingLimits';

type Props = { readonly findings: readonly FindingView[]; readonly empty: string };

/** Findings with value, uncertainty, limits and remarks; each leads to its method and its readings. */
export function FindingList({ findings, empty }: Props) {
  if (findings.length === 0) return <p className="soft">{empty}</p>;
  return (
    <ul className="findings">
      {findings.map(({ id, title, value, tone, limits, remarks, href }) => (
        <li key={id} className="finding" id={id}>
          <div className="finding__line">
            <span>{title}</span>
            <span className={tone === 'care' ? 'soft' : 'finding__value'}>{value}</span>
          </div>
          <FindingLimits limits={limits} />
          {remarks.map((remark) => (
            <p key={remark} className="small soft">
              {remark}
            </p>
          ))}
          {/* A plain link: a list can be long, and one that the page's scripts prepare costs the server more. */}
          <a href={href} className="action-link small" aria-label={`How it was found: ${title}`}>
            How it was found
          </a>
        </li>
      ))}
    </ul>
  );
}
