import { Link } from '@remix-run/react';
import { useEffect, useRef } from 'react';

/** The parts of a case, in the order of the work. */
export const CASE_PARTS = [
  'Overview',
  'Scene',
  'Train',
  'Marks',
  'Track',
  'Wheels',
  'Rails',
  'Turnout',
  'Photos',
  'Explanations',
  'Report',
  'Log',
] as const;

export function CaseTabs({ caseId, path }: { readonly caseId: string; readonly path: string }) {
  const open = path.split('/')[3];
  const strip = useRef<HTMLElement>(null);
  // On a narrow screen the strip scrolls; the open part should be in view.
  useEffect(() => {
    const tab = strip.current?.querySelector('[aria-current="page"]');
    if (tab instanceof HTMLElement && strip.current) {
      strip.current.scrollLeft = tab.offsetLeft - strip.current.clientWidth / 2 + tab.clientWidth / 2;
    }
  }, [path]);
  return (
    <nav className="tabs" aria-label="Parts of the case" ref={strip}>
      <ul>
        {CASE_PARTS.map((part) => (
          <li key={part}>
            <Link
              to={`/cases/${caseId}/${part.toLowerCase()}`}
              aria-current={part.toLowerCase() === open ? 'page' : undefined}
            >
              {part}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
