import { Link } from '@remix-run/react';
import type { PartTab } from '~/app/subjects/part.server';

type Props = { readonly tabs: readonly PartTab[]; readonly open: string | undefined };

const count = (n: number): string => (n === 0 ? 'none yet' : String(n));

/** The groups of readings of one thing; one is open at a time, so that the page stays short. */
export function SubjectTabs({ tabs, open }: Props) {
  if (tabs.length < 2) return null;
  return (
    <nav className="subtabs" aria-label="Groups of readings">
      <ul>
        {tabs.map(({ group, name, readings, href }) => (
          <li key={group}>
            <Link to={href} preventScrollReset aria-current={group === open ? 'true' : undefined}>
              {name} <span className="subtabs__count">{count(readings)}</span>
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
