import { describe, expect, it } from 'vitest';
import { readPhotoFile } from '~/app/photos/read-file';
import { sizeText } from '~/app/photos/size-text';

async function* inPieces(bytes: number, piece: number): AsyncGenerator<Uint8Array> {
  for (let sent = 0; sent < bytes; sent += piece) yield Buffer.alloc(Math.min(piece, bytes - sent), 7);
}

describe('reading an uploaded file', () => {
  it('takes a file of exactly the size allowed', async () => {
    const read = await readPhotoFile('a.jpg', inPieces(1000, 300), 1000);
    expect(read.ok && read.value.equals(Buffer.alloc(1000, 7))).toBe(true);
  });

  it('refuses one byte more, saying its name, both sizes and what to do', async () => {
    const read = await readPhotoFile('big.jpg', inPieces(50_000_001, 4_000_000), 50_000_000);
    expect(read).toEqual({
      ok: false,
      message:
        '“big.jpg” has 50.1 MB; the most that is taken of one photo is 50 MB. ' +
        'Save it at a lower size and choose it again.',
    });
  });

  it('reads a refused file to its end, so that the next one of the form can follow', async () => {
    const stream = inPieces(3000, 100);
    expect((await readPhotoFile('big.jpg', stream, 1000)).ok).toBe(false);
    expect((await stream.next()).done).toBe(true);
  });

  it('refuses an empty file', async () => {
    expect(await readPhotoFile('a.jpg', inPieces(0, 1), 10)).toMatchObject({ ok: false });
  });
});

describe('the size of a file in words', () => {
  it.each([
    [0, '0 bytes'],
    [999, '999 bytes'],
    [1000, '1 kB'],
    [999_499, '999 kB'],
    [999_500, '1 MB'],
    [4_240_000, '4.2 MB'],
    [60_000_000, '60 MB'],
  ])('%d', (bytes, text) => expect(sizeText(bytes)).toBe(text));
});
