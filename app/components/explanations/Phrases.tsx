import { Link } from '@remix-run/react';
import type { Phrase } from '~/app/explanations/phrases.server';

type Props = { readonly line: readonly Phrase[] };

/** A sentence whose parts lead to what they rest on; further sources follow as numbers. */
export function Phrases({ line }: Props) {
  return (
    <>
      {line.map(({ text, hrefs: [first, ...more] }, index) => (
        <span key={index}>
          {first === undefined ? text : <Link to={first}>{text}</Link>}
          {more.map((href, i) => (
            <sup key={href}>
              {' '}
              <Link to={href} aria-label={`Source ${i + 2}`}>
                {i + 2}
              </Link>
            </sup>
          ))}
        </span>
      ))}
    </>
  );
}
