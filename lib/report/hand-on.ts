import { finished } from 'node:stream/promises';

/** Bytes that may wait in memory before the writing of pages stops to let them out. */
const MOST_WAITING = 4_000_000;

export type Flow = {
  /** Waits until what the document has given is nearly all written. */
  readonly breathe: () => Promise<void>;
  /** Resolves when everything is written and `out` has ended. */
  readonly done: Promise<void>;
};

/**
 * Joins the document to where it is written. pdfkit hands on as fast as pages are made; without a
 * pause the whole file would wait in memory.
 */
export function handOn(doc: PDFKit.PDFDocument, out: NodeJS.WritableStream): Flow {
  const done = finished(out);
  // Heard again by whoever awaits `done`; here only so that a failure is not called unhandled meanwhile.
  done.catch(() => undefined);
  doc.pipe(out);
  const waiting = (): number =>
    doc.readableLength + ('writableLength' in out ? Number(out.writableLength) : 0);
  return {
    done,
    async breathe() {
      let failed = false;
      done.catch(() => {
        failed = true;
      });
      while (waiting() > MOST_WAITING && !failed) await new Promise((resume) => setImmediate(resume));
      if (failed) await done;
    },
  };
}
