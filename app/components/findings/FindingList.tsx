import { Link } from '@remix-run/react';
import type { FindingTone, FindingView } from '~/app/findings/view.server';

const CHIP: Readonly<Record<FindingTone, string>> = {
  good: 'chip chip--good',
  bad: 'chip chip--bad',
  care: 'chip chip--care',
  plain: 'chip',
};

function HowFound({ method, from, more }: FindingView) {
  return (
    <details className="disclose">
      <summary>How it was found</summary>
      <div className="stack small">
        <p>
          <Link to={`/methods#${method.id}`}>{method.name}</Link>. {method.formula}
        </p>
        <p>Holds for: {method.validRange}</p>
        <p>Source: {method.sources.join('; ')}</p>
        {from.length > 0 && (
          <p>
            From{' '}
            {from.map(({ href, text }, index) => (
              <span key={href}>
                {index > 0 && '; '}
                <Link to={href}>{text}</Link>
              </span>
            ))}
            {more > 0 && ` and ${more} more readings`}
          </p>
        )}
      </div>
    </details>
  );
}

type Props = { readonly findings: readonly FindingView[]; readonly empty: string };

/** Findings with value, uncertainty, limits and remarks; each leads to its readings and its method. */
export function FindingList({ findings, empty }: Props) {
  if (findings.length === 0) return <p className="soft">{empty}</p>;
  return (
    <ul className="findings">
      {findings.map((finding) => (
        <li key={finding.id} className="finding" id={finding.id}>
          <div className="finding__line">
            <span>{finding.title}</span>
            <span className={finding.tone === 'care' ? 'soft' : 'finding__value'}>{finding.value}</span>
          </div>
          {finding.limits.length > 0 && (
            <ul>
              {finding.limits.map(({ text, tone }) => (
                <li key={text}>
                  <span className={CHIP[tone]}>{text}</span>
                </li>
              ))}
            </ul>
          )}
          {finding.remarks.map((remark) => (
            <p key={remark} className="small soft">
              {remark}
            </p>
          ))}
          <HowFound {...finding} />
        </li>
      ))}
    </ul>
  );
}
