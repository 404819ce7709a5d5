import type { Writable } from 'node:stream';
import { finished } from 'node:stream/promises';
import { setImmediate } from 'node:timers/promises';

/** Bytes that may wait in memory before the setting of pages stops to let them out. */
const MOST_WAITING = 48_000_000;

export type Flow = {
  /** Lets go on what is being written, and waits when too much is waiting. */
  readonly breathe: () => Promise<void>;
  /** Resolves when everything is written and `out` has ended. */
  readonly done: Promise<void>;
};

/**
 * Joins the document to where it is written. pdfkit hands on as fast as pages are made, and without
 * a pause the whole file would wait in memory. What waits is handed to `out` at once, so that it
 * can write it in large stretches, while further pages are set.
 */
export function handOn(doc: PDFKit.PDFDocument, out: Writable): Flow {
  let waiting = 0;
  let wake: () => void = () => undefined;
  const done = finished(out);
  // Heard again by whoever awaits `done`; here only so that a failure is not called unhandled meanwhile.
  done.catch(() => undefined);
  out.once('close', () => wake());
  doc.on('data', (chunk: Uint8Array) => {
    if (out.destroyed) return;
    waiting += chunk.length;
    out.write(chunk, () => {
      waiting -= chunk.length;
      wake();
    });
  });
  doc.once('end', () => out.end());
  return {
    done,
    async breathe() {
      await setImmediate();
      while (waiting > MOST_WAITING && !out.destroyed) {
        await new Promise<void>((resolve) => {
          wake = resolve;
        });
      }
      if (out.destroyed) await done;
    },
  };
}
