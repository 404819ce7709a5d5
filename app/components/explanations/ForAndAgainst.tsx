import { Link } from '@remix-run/react';
import type { ExplanationView, Weighed } from '~/app/explanations/view.server';
import { decibansText } from './decibans';

type SideProps = { readonly title: string; readonly facts: readonly Weighed[] };

function Side({ title, facts }: SideProps) {
  return (
    <div>
      <h4>{title}</h4>
      {facts.length === 0 ? (
        <p className="soft">Nothing recorded.</p>
      ) : (
        <ul className="plain-list">
          {facts.map(({ fact, name, decibans }) => (
            <li key={fact}>
              <Link to={`?open=${fact}#fact-${fact}`}>{name.charAt(0).toUpperCase() + name.slice(1)}</Link>{' '}
              <strong>{decibansText(decibans)}</strong>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

type Props = { readonly explanation: ExplanationView };

/** One explanation with what speaks for it and against it, each in decibans against the background. */
export function ForAndAgainst({ explanation }: Props) {
  const { description, speaksFor, speaksAgainst, recorded, of } = explanation;
  return (
    <>
      <p>{description}</p>
      <div className="weighing__sides">
        <Side title="Speaks for it" facts={speaksFor} />
        <Side title="Speaks against it" facts={speaksAgainst} />
      </div>
      <p className="small soft">
        {recorded} of {of} witnesses that bear on it have a record.
      </p>
    </>
  );
}
