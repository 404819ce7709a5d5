import { Link } from '@remix-run/react';
import type { PhotoView } from '~/app/photos/view.server';

type Props = {
  readonly photo: PhotoView;
  /** Address of the photo with all that is known about it. */
  readonly href: string;
};

function Line({
  label,
  text,
  href,
}: {
  readonly label: string;
  readonly text: string;
  readonly href?: string;
}) {
  return (
    <div>
      <dt>{label}</dt>
      <dd>{href ? <Link to={href}>{text}</Link> : text}</dd>
    </div>
  );
}

/** One photo in the list. */
export function PhotoCard({ photo, href }: Props) {
  const { shows, removed } = photo;
  return (
    <li className={removed === null ? 'photo' : 'photo photo--removed'} id={photo.id}>
      <Link to={href} className="photo__picture">
        <img src={photo.thumb} alt={photo.alt} loading="lazy" decoding="async" />
      </Link>
      {removed !== null && <p className="chip chip--care">Removed: {removed}</p>}
      <p className="photo__caption">
        <Link to={href}>{photo.caption || 'No caption yet'}</Link>
      </p>
      <dl className="photo__facts">
        <Line label="Shows" text={shows?.text ?? 'not said'} href={shows?.href} />
        <Line
          label="Taken"
          text={`${photo.takenAt || 'time not known'}${photo.takenBy && `, ${photo.takenBy}`}`}
        />
        {photo.position && <Line label="At" text={photo.position} />}
        <Line label="File" text={`${photo.fileName}, ${photo.size}`} />
      </dl>
      <p className="hash photo__hash">
        <span className="visually-hidden">SHA-256: </span>
        {photo.sha256}
      </p>
    </li>
  );
}
