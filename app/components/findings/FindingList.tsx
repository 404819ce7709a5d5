import type { FindingView } from '~/app/findings/view.server';
import { sharedRemarks } from '~/lib/findings/shared-remarks';
import { FindingLimits } from './FindingLimits';

type Props = { readonly findings: readonly FindingView[]; readonly empty: string };

/**
 * Findings with value, uncertainty, limits and remarks; each leads to its method and its readings. Remarks
 * on several stand once, below.
 */
export function FindingList({ findings, empty }: Props) {
  if (findings.length === 0) return <p className="soft">{empty}</p>;
  const shared = sharedRemarks(findings);
  return (
    <>
      <ul className="findings">
        {findings.map(({ id, title, value, tone, limits, remarks, href }) => {
          const lettered = remarks.flatMap((remark) => shared.get(remark) ?? []).join(', ');
          return (
            <li key={id} className="finding" id={id}>
              <div className="finding__line">
                <span>
                  {title}
                  {lettered !== '' && <span className="small soft"> ({lettered})</span>}
                </span>
                <span className={tone === 'care' ? 'soft' : 'finding__value'}>{value}</span>
              </div>
              <FindingLimits limits={limits} />
              {remarks
                .filter((remark) => !shared.has(remark))
                .map((remark) => (
                  <p key={remark} className="small soft">
                    {remark}
                  </p>
                ))}
              {/* A plain link: a list can be long, and one that the page's scripts prepare costs the server more. */}
              <a href={href} className="action-link small" aria-label={`How it was found: ${title}`}>
                How it was found
              </a>
            </li>
          );
        })}
      </ul>
      {shared.size > 0 && (
        <ul className="plain-list small soft">
          {[...shared].map(([remark, letter]) => (
            <li key={letter}>
              <b>{letter}</b> {remark}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
