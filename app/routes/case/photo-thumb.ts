import type { LoaderFunctionArgs } from '@remix-run/node';
import { notFound } from '~/app/case.server';
import { files } from '~/app/files.server';
import { photoIn } from '~/app/photos/find.server';
import { serveFile } from '~/app/photos/serve.server';
import { renditionPath } from '~/db/photo-intake';

/** A smaller picture of the photo: for lists, or with ?size=print or ?size=trace for reading or tracing on a screen. */
export async function loader({ request, params }: LoaderFunctionArgs): Promise<Response> {
  const { photo } = photoIn(params);
  const store = files();
  if (!store.has(photo.sha256)) {
    throw notFound('The file of this photo is missing from the data folder. Restore it from a backup.');
  }
  const asked = new URL(request.url).searchParams.get('size');
  const size = asked === 'print' || asked === 'trace' ? asked : 'thumb';
  const path = await renditionPath(store, photo.sha256, size);
  return serveFile(path, 'image/jpeg', `${photo.fileName.replace(/\.[^.]*$/, '')}-${size}.jpg`);
}
