import type { ExplanationView, Weighed } from '~/app/explanations/view.server';
import { decibansText } from './decibans';

function Facts({ title, facts, none }: { title: string; facts: readonly Weighed[]; none: string }) {
  return (
    <div>
      <h4>{title}</h4>
      {facts.length === 0 ? (
        <p className="soft">{none}</p>
      ) : (
        <ul className="plain-list">
          {facts.map(({ fact, name, decibans }) => (
            <li key={fact}>
              <a href={`#fact-${fact}`}>{name.charAt(0).toUpperCase() + name.slice(1)}</a>{' '}
              <strong>{decibansText(decibans)}</strong>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

type Props = { readonly explanation: ExplanationView; readonly open: boolean };

/** One explanation with what speaks for it and against it, each in decibans against the background. */
export function ForAndAgainst({ explanation, open }: Props) {
  const { id, name, description, decibans, speaksFor, speaksAgainst, recorded, of } = explanation;
  return (
    <details className="disclose weighing" open={open} id={`explanation-${id}`}>
      <summary>
        <span>{name}</span>
        <strong>{decibansText(decibans)} decibans</strong>
      </summary>
      <p>{description}</p>
      <div className="weighing__sides">
        <Facts title="Speaks for it" facts={speaksFor} none="Nothing recorded." />
        <Facts title="Speaks against it" facts={speaksAgainst} none="Nothing recorded." />
      </div>
      <p className="small soft">
        {recorded} of {of} witnesses that bear on it have a record.
      </p>
    </details>
  );
}
