import { closeSync, fstatSync, openSync, readSync } from 'node:fs';

/**
 * Reads one file after another into the same stretch of memory: what is returned holds until the
 * next file is read. pdfkit copies a picture when it is placed, so a fresh buffer for each would
 * only be more to clear away.
 */
export function pictureReader(): (path: string) => Buffer {
  let kept = Buffer.alloc(0);
  return (path) => {
    const file = openSync(path, 'r');
    try {
      const { size } = fstatSync(file);
      if (kept.length < size) kept = Buffer.allocUnsafeSlow(Math.ceil(size * 1.5));
      let read = 0;
      while (read < size) {
        const got = readSync(file, kept, read, size - read, read);
        if (got === 0) break;
        read += got;
      }
      return kept.subarray(0, read);
    } finally {
      closeSync(file);
    }
  };
}
