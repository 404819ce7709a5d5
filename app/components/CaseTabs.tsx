import { NavLink } from '@remix-run/react';
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
  const strip = useRef<HTMLElement>(null);
  // On a narrow screen the strip scrolls; the open part should be in view.
  useEffect(() => {
    const open = strip.current?.querySelector('[aria-current="page"]');
    if (open instanceof HTMLElement && strip.current) {
      strip.current.scrollLeft = open.offsetLeft - strip.current.clientWidth / 2 + open.clientWidth / 2;
    }
  }, [path]);
  return (
    <nav className="tabs" aria-label="Parts of the case" ref={strip}>
      <ul>
        {CASE_PARTS.map((part) => (
          <li key={part}>
            <NavLink to={`/cases/${caseId}/${part.toLowerCase()}`}>{part}</NavLink>
          </li>
        ))}
      </ul>
    </nav>
  );
}
