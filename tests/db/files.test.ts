import { createHash, randomBytes } from 'node:crypto';
import {
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { fileStore } from '~/db/files';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'flangemark-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const LIMITS = { maxBytes: 1_000_000 };
const unfinished = () => readdirSync(join(folder, 'files', 'unfinished'));
const inPieces = (content: Buffer, size: number) =>
  Readable.from(
    (function* () {
      for (let at = 0; at < content.length; at += size) yield content.subarray(at, at + size);
    })(),
  );

describe('file store', () => {
  it('keeps a file under its SHA-256', async () => {
    const store = fileStore(folder);
    const content = randomBytes(300_000);
    const sha256 = createHash('sha256').update(content).digest('hex');
    const stored = await store.storeStream(inPieces(content, 7001), LIMITS);
    expect(stored).toEqual({ ok: true, value: { sha256, bytes: 300_000, path: store.pathOf(sha256) } });
    expect(readFileSync(store.pathOf(sha256)).equals(content)).toBe(true);
    expect(store.has(sha256)).toBe(true);
    expect(unfinished()).toEqual([]);
  });

  it('takes the same file twice', async () => {
    const store = fileStore(folder);
    const first = await store.storeStream(Readable.from([Buffer.from('abc')]), LIMITS);
    const second = await store.storeStream(Readable.from([Buffer.from('a'), Buffer.from('bc')]), LIMITS);
    expect(second).toEqual(first);
    expect(unfinished()).toEqual([]);
  });

  it('refuses a file above the limit, reads it to its end and leaves nothing', async () => {
    const store = fileStore(folder);
    const stream = inPieces(Buffer.alloc(2_500_000), 65_536);
    const stored = await store.storeStream(stream, LIMITS);
    expect(stored).toEqual({
      ok: false,
      message: expect.stringContaining('has 2.5 MB; the most that is taken is 1.0 MB'),
    });
    expect(stream.readableEnded).toBe(true);
    expect(unfinished()).toEqual([]);
    expect(readdirSync(join(folder, 'files'))).toEqual(['unfinished']);
  });

  it('takes a file of exactly the limit', async () =>
    expect(
      await fileStore(folder).storeStream(inPieces(Buffer.alloc(1_000_000), 65_536), LIMITS),
    ).toMatchObject({
      ok: true,
    }));

  it('refuses an empty file', async () => {
    expect(await fileStore(folder).storeStream(Readable.from([]), LIMITS)).toMatchObject({ ok: false });
    expect(unfinished()).toEqual([]);
  });

  it('leaves nothing of an upload that breaks off', async () => {
    const broken = Readable.from(
      (function* () {
        yield Buffer.from('half');
        throw new Error('connection lost');
      })(),
    );
    await expect(fileStore(folder).storeStream(broken, LIMITS)).rejects.toThrow('connection lost');
    expect(unfinished()).toEqual([]);
  });

  it('clears away what a killed process left, but not what another is writing', () => {
    fileStore(folder);
    const old = join(folder, 'files', 'unfinished', 'old');
    const young = join(folder, 'files', 'unfinished', 'young');
    for (const path of [old, young]) writeFileSync(path, 'half');
    const twoDaysAgo = Date.now() / 1000 - 2 * 24 * 3600;
    utimesSync(old, twoDaysAgo, twoDaysAgo);
    fileStore(folder);
    expect(unfinished()).toEqual(['young']);
  });

  it('never leaves the folder, whatever name it is asked for', () => {
    const store = fileStore(folder);
    expect(() => store.pathOf('../../etc/passwd')).toThrow('Not a SHA-256');
    expect(() => store.derivedPath('a'.repeat(64), '../x')).toThrow('Not the name');
  });

  it('keeps derived pictures apart, replaceable', () => {
    const store = fileStore(folder);
    const sha256 = 'a'.repeat(64);
    store.writeDerived(sha256, 'thumb', Buffer.from('1'));
    const path = store.writeDerived(sha256, 'thumb', Buffer.from('2'));
    expect(path).toBe(store.derivedPath(sha256, 'thumb'));
    expect(readFileSync(path, 'utf8')).toBe('2');
    expect(existsSync(join(folder, 'derived', `${sha256}-thumb.jpg`))).toBe(true);
  });
});
