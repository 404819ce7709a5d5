import type { Source } from '~/lib/findings/finding';

/** Where a formula or a limit comes from; what is not published says so. */
export function SourceList({ sources }: { readonly sources: readonly Source[] }) {
  return (
    <ul className="plain-list small">
      {sources.map(({ text, status }) => (
        <li key={text}>
          {text} {status !== 'published' && <span className="chip chip--care">{status}</span>}
        </li>
      ))}
    </ul>
  );
}
