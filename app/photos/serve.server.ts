import { createReadableStreamFromReadable } from '@remix-run/node';
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { notFound } from '~/app/case.server';
import { inlineAs } from './served-name';

/** A file that never changes under its address; only this browser keeps it, for it may be evidence. */
export async function serveFile(path: string, mime: string, fileName: string): Promise<Response> {
  const size = await stat(path).then(
    (stats) => stats.size,
    () => null,
  );
  if (size === null) {
    throw notFound('The file of this photo is missing from the data folder. Restore it from a backup.');
  }
  return new Response(createReadableStreamFromReadable(createReadStream(path)), {
    headers: {
      'Content-Type': mime,
      'Content-Length': String(size),
      'Content-Disposition': inlineAs(fileName),
      'Cache-Control': 'private, max-age=31536000, immutable',
    },
  });
}
