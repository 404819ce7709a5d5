import { Link } from '@remix-run/react';

type Props = {
  /** What the tabs choose between, such as "groups of readings". */
  readonly label: string;
  readonly tabs: readonly {
    readonly id: string;
    readonly name: string;
    readonly count: number;
    readonly href: string;
  }[];
  readonly open: string | undefined;
};

/** Parts of a sheet of which one is open at a time, so that the page stays short. */
export function SubTabs({ label, tabs, open }: Props) {
  if (tabs.length < 2) return null;
  return (
    <nav className="subtabs" aria-label={label}>
      <ul>
        {tabs.map(({ id, name, count, href }) => (
          <li key={id}>
            <Link to={href} preventScrollReset aria-current={id === open ? 'true' : undefined}>
              {name} <span className="subtabs__count">{count === 0 ? 'none yet' : count}</span>
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
