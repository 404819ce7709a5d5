import { once } from 'node:events';
import type { Writable } from 'node:stream';
import { finished } from 'node:stream/promises';
import { setImmediate } from 'node:timers/promises';

/** Bytes that may wait in memory before the setting of pages stops to let them out. */
const MOST_WAITING = 24_000_000;

export type Flow = {
  /** Waits until most of what the document has given is written. */
  readonly breathe: () => Promise<void>;
  /** Resolves when everything is written and `out` has ended. */
  readonly done: Promise<void>;
};

/**
 * Joins the document to where it is written. pdfkit hands on as fast as pages are made; without a
 * pause the whole file would wait in memory.
 */
export function handOn(doc: PDFKit.PDFDocument, out: Writable): Flow {
  const done = finished(out);
  // Heard again by whoever awaits `done`; here only so that a failure is not called unhandled meanwhile.
  done.catch(() => undefined);
  doc.pipe(out);
  return {
    done,
    async breathe() {
      while (doc.readableLength + out.writableLength > MOST_WAITING) {
        if (out.destroyed) return done;
        await (out.writableNeedDrain ? Promise.race([once(out, 'drain'), done]) : setImmediate());
      }
    },
  };
}
