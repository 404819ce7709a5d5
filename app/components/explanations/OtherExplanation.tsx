import { Link } from '@remix-run/react';
import type { StandingRefusal } from '~/app/explanations/standing.server';
import type { OtherView } from '~/app/explanations/view.server';
import { StandingForm } from './StandingForm';

type Props = { readonly other: OtherView; readonly refused: StandingRefusal | null };

/** An explanation outside the four: what to look at, what was seen, and the investigator's word on it. */
export function OtherExplanation({ other, refused }: Props) {
  const { id, description, state, reason, said, toExclude, seen, screens, notLooked } = other;
  return (
    <>
      <p>{description}</p>
      {said && <p className="soft small">Said by {said}</p>}
      <h4>Look at before excluding it</h4>
      <ul>
        {toExclude.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {seen.length > 0 && (
        <p>
          Seen, and speaking for it:{' '}
          {seen.map(({ text, href }, index) => (
            <span key={href}>
              {index > 0 && '; '}
              <Link to={href}>{text}</Link>
            </span>
          ))}
        </p>
      )}
      {screens.length > 0 && (
        <>
          <h4>What its screens say: to exclude it, or to keep it</h4>
          <ul>
            {screens.map(({ title, value, href }) => (
              <li key={href}>
                <Link to={href}>{title}</Link>: {value}
              </li>
            ))}
          </ul>
        </>
      )}
      {notLooked.length > 0 && <p className="soft">Not recorded yet: {notLooked.join(', ')}.</p>}
      <StandingForm explanation={id} standing={state} reason={reason} refused={refused} />
    </>
  );
}
