import type { LoaderFunctionArgs } from '@remix-run/node';
import { files } from '~/app/files.server';
import { photoIn } from '~/app/photos/find.server';
import { serveFile } from '~/app/photos/serve.server';

/** The photo as it came, byte for byte. */
export const loader = ({ params }: LoaderFunctionArgs): Promise<Response> => {
  const { photo } = photoIn(params);
  return serveFile(files().pathOf(photo.sha256), photo.mime, photo.fileName);
};
