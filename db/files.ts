import { createHash } from 'node:crypto';
import { existsSync, readdirSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { ok, refuse, type Result } from '~/lib/readings/result';
import { makeFolder, syncFolder } from './durable';
import { newId } from './id';

export type StoredFile = { readonly sha256: string; readonly bytes: number; readonly path: string };

/** Photos and imported files, each named by its SHA-256, and pictures derived from them. */
export type FileStore = {
  /**
   * Keeps everything the stream gives. Once this answers, the file outlives a power cut, so rows
   * that name it may be written. Refuses an empty file and one above `maxBytes`, and leaves nothing
   * behind; the stream is read to its end all the same, so that the sender hears the answer.
   */
  readonly storeStream: (
    stream: AsyncIterable<Uint8Array>,
    limits: { readonly maxBytes: number },
  ) => Promise<Result<StoredFile>>;
  readonly pathOf: (sha256: string) => string;
  readonly has: (sha256: string) => boolean;
  /** Where a picture made from a file is kept; it can always be made again, so it may be missing. */
  readonly derivedPath: (sha256: string, name: string) => string;
  readonly hasDerived: (sha256: string, name: string) => boolean;
  readonly writeDerived: (sha256: string, name: string, content: Uint8Array) => string;
};

const SHA256 = /^[0-9a-f]{64}$/;
const ABANDONED_AFTER_MS = 24 * 60 * 60 * 1000;
const MEGABYTE = 1_000_000;

export function fileStore(dataFolder: string): FileStore {
  const files = resolve(dataFolder, 'files');
  const unfinished = join(files, 'unfinished');
  const derived = resolve(dataFolder, 'derived');
  makeFolder(unfinished);
  makeFolder(derived);
  sweep(unfinished);

  const folderOf = (sha256: string): string => {
    if (!SHA256.test(sha256)) throw new Error('Not a SHA-256.');
    return join(files, sha256.slice(0, 2));
  };
  const pathOf = (sha256: string): string => join(folderOf(sha256), sha256);
  const has = (sha256: string): boolean => existsSync(pathOf(sha256));
  const derivedPath = (sha256: string, name: string): string => {
    if (!SHA256.test(sha256) || !/^[a-z0-9-]+$/.test(name)) throw new Error('Not the name of a picture.');
    return join(derived, `${sha256}-${name}.jpg`);
  };

  return {
    pathOf,
    has,
    derivedPath,
    hasDerived: (sha256, name) => existsSync(derivedPath(sha256, name)),
    writeDerived(sha256, name, content) {
      const path = derivedPath(sha256, name);
      const temporary = `${path}.${newId()}`;
      writeFileSync(temporary, content);
      renameSync(temporary, path);
      return path;
    },
    async storeStream(stream, { maxBytes }) {
      const temporary = join(unfinished, newId());
      const written = await writeAll(stream, temporary, maxBytes);
      if (!written.ok) return written;
      const { sha256, bytes } = written.value;
      makeFolder(folderOf(sha256));
      renameSync(temporary, pathOf(sha256));
      syncFolder(folderOf(sha256));
      return ok({ sha256, bytes, path: pathOf(sha256) });
    },
  };
}

async function writeAll(
  stream: AsyncIterable<Uint8Array>,
  path: string,
  maxBytes: number,
): Promise<Result<{ sha256: string; bytes: number }>> {
  const hash = createHash('sha256');
  const handle = await open(path, 'wx');
  let bytes = 0;
  let kept = false;
  try {
    for await (const chunk of stream) {
      bytes += chunk.byteLength;
      if (bytes > maxBytes) continue;
      hash.update(chunk);
      await handle.writeFile(chunk);
    }
    if (bytes > maxBytes) return refuse(tooLarge(bytes, maxBytes));
    if (bytes === 0) return refuse('The file is empty. Choose a file that holds something.');
    await handle.sync();
    kept = true;
    return ok({ sha256: hash.digest('hex'), bytes });
  } finally {
    await handle.close();
    if (!kept) rmSync(path, { force: true });
  }
}

const megabytes = (bytes: number): string =>
  bytes < MEGABYTE ? `${Math.ceil(bytes / 1000)} kB` : `${(bytes / MEGABYTE).toFixed(1)} MB`;

const tooLarge = (bytes: number, maxBytes: number): string =>
  `The file has ${megabytes(bytes)}; the most that is taken is ${megabytes(maxBytes)}. ` +
  'Choose a smaller file, or save the picture at a lower size.';

/** What a killed process left half-written; younger ones may belong to a process that still runs. */
function sweep(unfinished: string): void {
  for (const name of readdirSync(unfinished)) {
    const path = join(unfinished, name);
    if (Date.now() - statSync(path).mtimeMs > ABANDONED_AFTER_MS) rmSync(path, { force: true });
  }
}
