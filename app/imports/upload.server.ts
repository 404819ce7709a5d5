import busboy from 'busboy';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { ReadableStream } from 'node:stream/web';
import { files } from '~/app/files.server';
import { sizeText } from '~/app/photos/size-text';
import { decodeText, readCsv } from '~/lib/case/imports/csv';
import { ok, refuse, type Result } from '~/lib/readings/result';

/** A recorder download of a day at one sample a second is about 8 MB. */
export const LARGEST_BYTES = 20_000_000;

export type UploadedFile = { readonly fileName: string; readonly sha256: string };

type Received = { readonly fileName: string; readonly bytes: Buffer; readonly tooLarge: boolean };

/** The one file of a multipart form, at most LARGEST_BYTES of it; null when none was chosen. */
async function receive(request: Request): Promise<Received | null> {
  if (request.body === null) return null;
  const parser = busboy({
    headers: { 'content-type': request.headers.get('content-type') ?? '' },
    defParamCharset: 'utf8',
    limits: { files: 1, fields: 10, fileSize: LARGEST_BYTES },
  });
  let received: Received | null = null;
  let reading = Promise.resolve();
  parser.on('file', (_name, stream, { filename }) => {
    // A form sent without a choice carries one nameless, empty file.
    if (!filename) return void stream.resume();
    reading = (async () => {
      const chunks: Buffer[] = [];
      for await (const chunk of stream) chunks.push(chunk as Buffer);
      received = { fileName: filename, bytes: Buffer.concat(chunks), tooLarge: stream.truncated === true };
    })();
    reading.catch((error: unknown) => parser.destroy(error instanceof Error ? error : undefined));
  });
  await pipeline(Readable.fromWeb(request.body as ReadableStream), parser);
  await reading;
  return received;
}

/** What is asked for, in the words of its refusals. */
type Wanted = {
  readonly missing: string;
  readonly tooLarge: string;
  readonly empty: string;
  /** Refuses a text that is not what is asked for. */
  readonly check: (text: string) => Result<unknown>;
};

/** Takes the chosen file into the store once its text is what is asked for; says what to choose instead. */
export async function takeText(request: Request, wanted: Wanted): Promise<Result<UploadedFile>> {
  const received = await receive(request);
  if (received === null) return refuse(wanted.missing);
  const { fileName, bytes, tooLarge } = received;
  if (tooLarge)
    return refuse(
      `“${fileName}” is larger than ${sizeText(LARGEST_BYTES)}, the most that is taken. ${wanted.tooLarge}`,
    );
  if (bytes.length === 0) return refuse(`“${fileName}” is empty. ${wanted.empty}`);
  const text = decodeText(bytes);
  if (!text.ok) return refuse(`“${fileName}”: ${text.message}`);
  const checked = wanted.check(text.value);
  if (!checked.ok) return refuse(`“${fileName}”: ${checked.message}`);
  const stored = await files().storeStream(Readable.from([bytes]), { maxBytes: LARGEST_BYTES });
  return stored.ok ? ok({ fileName, sha256: stored.value.sha256 }) : stored;
}

/** Takes the chosen file into the store once it has been read as a table. */
export const takeTable = (request: Request): Promise<Result<UploadedFile>> =>
  takeText(request, {
    missing: 'Choose the CSV file first.',
    tooLarge: 'Export fewer rows, or the part around the derailment.',
    empty: 'Choose the CSV file itself.',
    check: readCsv,
  });

/** Longest block that is pasted rather than chosen as a file. */
export const LONGEST_PASTE = 500_000;

/** Takes a pasted block into the store, as a file of its own, once it has been read as a table. */
export async function takePasted(text: string): Promise<Result<UploadedFile>> {
  if (text.trim() === '') return refuse('Nothing is pasted. Paste the rows with their header above them.');
  if (text.length > LONGEST_PASTE)
    return refuse(`Paste at most ${LONGEST_PASTE} characters, or choose the table as a file.`);
  const checked = readCsv(text);
  if (!checked.ok) return checked;
  const stored = await files().storeStream(Readable.from([Buffer.from(text, 'utf8')]), {
    maxBytes: LARGEST_BYTES,
  });
  return stored.ok ? ok({ fileName: PASTED_NAME, sha256: stored.value.sha256 }) : stored;
}

const PASTED_NAME = 'pasted rows.csv';
