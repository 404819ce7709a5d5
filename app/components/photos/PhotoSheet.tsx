import { Form, Link } from '@remix-run/react';
import type { ReactNode } from 'react';
import type { PhotoView } from '~/app/photos/view.server';
import { ReasonForm } from '../ReasonForm';
import { Sheet } from '../Sheet';

type Props = {
  readonly photo: PhotoView;
  /** The photos before and after it in the list. */
  readonly before: string | null;
  readonly after: string | null;
  readonly list: string;
  readonly reasonError?: string;
  readonly children: ReactNode;
};

/** One photo, large, with all that is known about it; the form about it stands beside the picture. */
export function PhotoSheet({ photo, before, after, list, reasonError, children }: Props) {
  const facts = [
    { label: 'Shows', text: photo.shows?.text ?? 'not said', href: photo.shows?.href },
    { label: 'Taken', text: photo.takenAt || 'time not known' },
    { label: 'By', text: photo.takenBy || 'not said' },
    { label: 'Position', text: photo.position || 'not in the file' },
    { label: 'File', text: photo.fileName },
    { label: 'Size', text: `${photo.size}, ${photo.pixels} pixels` },
  ];
  return (
    <Sheet
      title={photo.caption || photo.fileName}
      id="photo"
      aside={
        <nav className="row" aria-label="Photos">
          {before && <Link to={before}>← Before</Link>}
          {after && <Link to={after}>Next →</Link>}
          <Link to={list}>All photos</Link>
        </nav>
      }
    >
      {photo.removed !== null && (
        <div className="note note--care">
          <p>This photo was removed: {photo.removed}</p>
          <Form method="post">
            <input type="hidden" name="intent" value="restore" />
            <button className="button">Put it back</button>
          </Form>
        </div>
      )}
      <div className="beside">
        <div className="stack">
          <a href={photo.file} className="photo__large">
            <img src={`${photo.thumb}?size=print`} alt={photo.alt} />
          </a>
          <p>
            <a href={photo.file}>Open the file as it came</a>
          </p>
          <dl className="facts">
            {facts.map(({ label, text, href }) => (
              <div key={label}>
                <dt>{label}</dt>
                <dd>{href ? <Link to={href}>{text}</Link> : text}</dd>
              </div>
            ))}
          </dl>
          <p className="small">
            SHA-256 of the file: <span className="hash photo__hash">{photo.sha256}</span>
          </p>
        </div>
        <div className="stack">
          {children}
          {photo.removed === null && (
            <ReasonForm
              label="Remove this photo"
              intent="remove"
              explain="It leaves the lists and the report, with the reason beside it. The file stays and can be put back."
              error={reasonError}
            />
          )}
        </div>
      </div>
    </Sheet>
  );
}
