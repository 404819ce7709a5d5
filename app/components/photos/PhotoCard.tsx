import { Link } from '@remix-run/react';
import type { ReactNode } from 'react';
import type { PhotoView } from '~/app/photos/view.server';

type Props = {
  readonly photo: PhotoView;
  /** Address of the photo with all that is known about it. */
  readonly href: string;
};

function Line({ label, children }: { readonly label: string; readonly children: ReactNode }) {
  return (
    <p className="photo__line">
      <span className="soft">{label}</span> {children}
    </p>
  );
}

/** One photo in the list; there are many on a page, so each is made of little. */
export function PhotoCard({ photo, href }: Props) {
  const { shows, removed, takenAt, takenBy } = photo;
  return (
    <li className={removed === null ? 'photo' : 'photo photo--removed'} id={photo.id}>
      <Link to={href} className="photo__picture">
        <img src={photo.thumb} alt={photo.alt} loading="lazy" decoding="async" />
      </Link>
      {removed !== null && <p className="chip chip--care">Removed: {removed}</p>}
      <p className="photo__caption">{photo.caption || <span className="soft">No caption yet</span>}</p>
      <Line label="Shows">{shows ? <Link to={shows.href}>{shows.text}</Link> : 'not said'}</Line>
      <Line label="Taken">
        {takenAt || 'time not known'}
        {takenBy && `, ${takenBy}`}
      </Line>
      {photo.position && <Line label="At">{photo.position}</Line>}
      <Line label="File">
        {photo.fileName}, {photo.size}
      </Line>
      <p className="hash photo__hash">{photo.sha256}</p>
      <p>
        <Link to={href}>Open and describe</Link>
      </p>
    </li>
  );
}
