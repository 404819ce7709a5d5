import busboy from 'busboy';
import { createHash } from 'node:crypto';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { ReadableStream } from 'node:stream/web';
import type { LoadedCase } from '~/app/case.server';
import { files } from '~/app/files.server';
import type { Actor } from '~/db/actor';
import { takePhotoIn } from '~/db/photo-intake';
import type { SubjectRef } from '~/lib/case/record';
import { LARGEST_BYTES, MOST_FILES } from './limits.server';
import { readPhotoFile } from './read-file';
import { subjectAt } from './subject';

export type Taken = { readonly kept: number; readonly refused: readonly string[] };

type Batch = {
  readonly loaded: LoadedCase;
  readonly actor: Actor;
  readonly there: Set<string>;
  subject: SubjectRef | null;
  kept: number;
  readonly refused: string[];
};

const FIELD_BYTES = 1000;

const startBatch = (loaded: LoadedCase, actor: Actor): Batch => ({
  loaded,
  actor,
  there: new Set(loaded.record.photos.filter(({ removed }) => removed === null).map(({ sha256 }) => sha256)),
  subject: null,
  kept: 0,
  refused: [],
});

async function takeOne(batch: Batch, fileName: string, stream: AsyncIterable<Uint8Array>): Promise<void> {
  const { loaded, actor, there, subject } = batch;
  const read = await readPhotoFile(fileName, stream, LARGEST_BYTES);
  if (!read.ok) {
    batch.refused.push(read.message);
    return;
  }
  const about = { caption: '', subject, personId: actor.personId };
  const file = { fileName, bytes: read.value };
  const taken = await takePhotoIn(loaded.db, files(), loaded.caseId, file, about, actor, there);
  if (!taken.ok) {
    batch.refused.push(taken.message);
    return;
  }
  there.add(createHash('sha256').update(read.value).digest('hex'));
  batch.kept++;
}

/**
 * Takes in the photos of a multipart form, one after the other as they arrive: one that is refused
 * does not hold up the rest, and never more than one is in memory.
 */
export async function takeUpload(request: Request, loaded: LoadedCase, actor: Actor): Promise<Taken> {
  const batch = startBatch(loaded, actor);
  const { body } = request;
  if (body === null) return batch;
  const parser = busboy({
    headers: { 'content-type': request.headers.get('content-type') ?? '' },
    defParamCharset: 'utf8',
    limits: { files: MOST_FILES, fields: 10, fieldSize: FIELD_BYTES },
  });
  let taking = Promise.resolve();
  parser.on('field', (name, value) => {
    if (name === 'subject') batch.subject = subjectAt(loaded.record, value);
  });
  parser.on('file', (_name, stream, { filename }) => {
    // A form sent without a choice carries one nameless, empty file.
    if (!filename) return void stream.resume();
    // Until it is its turn nothing reads the stream, so the sender waits.
    taking = taking.then(() => takeOne(batch, filename, stream));
    taking.catch((error: unknown) => parser.destroy(error instanceof Error ? error : undefined));
  });
  parser.on('filesLimit', () =>
    batch.refused.push(
      `More than ${MOST_FILES} files were sent; only the first ${MOST_FILES} were looked at. Choose the others and send them again.`,
    ),
  );
  await pipeline(Readable.fromWeb(body as ReadableStream), parser);
  await taking;
  return batch;
}
