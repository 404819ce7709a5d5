import type { Params } from '@remix-run/react';
import { loadCase, notFound, type LoadedCase } from '~/app/case.server';
import type { Photo } from '~/lib/case/record';

/** The photo named in the address, removed or not; a 404 when it is not one of this case. */
export function photoIn(params: Params): { readonly loaded: LoadedCase; readonly photo: Photo } {
  const loaded = loadCase(params);
  const photo = loaded.record.photos.find(({ id }) => id === params.photoId);
  if (!photo) throw notFound('There is no such photo in this case. Open it from the list of photos.');
  return { loaded, photo };
}
