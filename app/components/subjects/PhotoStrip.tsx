import { Link } from '@remix-run/react';
import type { SubjectPart } from '~/app/subjects/part.server';

/** The photos that show a thing, and the way to add more of it. */
export function PhotoStrip({ photos, addPhotos }: Pick<SubjectPart, 'photos' | 'addPhotos'>) {
  return (
    <div className="stack">
      {photos.length > 0 && (
        <ul className="photo-strip" aria-label="Photos of it">
          {photos.map(({ href, thumb, alt }) => (
            <li key={href}>
              <Link to={href}>
                <img src={thumb} alt={alt} loading="lazy" decoding="async" />
              </Link>
            </li>
          ))}
        </ul>
      )}
      <p>
        <Link to={addPhotos}>Add photos of it</Link>
      </p>
    </div>
  );
}
