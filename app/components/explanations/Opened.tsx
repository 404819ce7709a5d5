import { Link } from '@remix-run/react';
import type { ReactNode } from 'react';

type Props = {
  /** What `?open=` names. */
  readonly name: string;
  readonly anchor: string;
  readonly title: string;
  readonly aside: ReactNode;
  /** Shown in full when it is the one that is open. */
  readonly children: ReactNode;
};

/** One line of a list that opens on the server, so that only what is open is sent. */
export function Opened({ name, anchor, title, aside, children }: Props) {
  return (
    <li className="weighing" id={anchor}>
      <div className="weighing__line">
        <Link
          to={children ? `?#${anchor}` : `?open=${name}#${anchor}`}
          className="action-link"
          preventScrollReset
          aria-expanded={Boolean(children)}
        >
          {title}
        </Link>
        {aside}
      </div>
      {children}
    </li>
  );
}
