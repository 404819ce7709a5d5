import { Link } from '@remix-run/react';
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
          <Link to={href} className="action-link small" prefetch="none">
            How it was found<span className="visually-hidden">: {title}</span>
          </Link>
        </li>
      ))}
    </ul>
  );
}
