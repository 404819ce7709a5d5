import { Link } from '@remix-run/react';
import type { SubjectPart } from '~/app/subjects/part.server';

/** What is said of a thing: its state first, because it decides whether its readings count. */
export function SubjectHead({ part }: { readonly part: SubjectPart }) {
  return (
    <>
      {part.removed !== null && (
        <div className="note note--care">
          Removed: {part.removed}. <Link to={part.edit}>Put it back</Link> to use it again.
        </div>
      )}
      {part.state && <div className="note note--care">{part.state}</div>}
      {part.facts.length > 0 && (
        <dl className="facts">
          {part.facts.map(({ label, text }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
      )}
    </>
  );
}
