import { createWriteStream } from 'node:fs';
import { join } from 'node:path';
import { finished } from 'node:stream/promises';
import { PassThrough, type Writable } from 'node:stream';
import PDFDocument from 'pdfkit';
import { readCase } from '~/db/cases';
import { fileStore } from '~/db/files';
import { openDatabase } from '~/db/open';
import type { CaseRecord } from '~/lib/case/record';
import { assess } from '~/lib/explanations/assess';
import { buildReport } from '~/lib/report/build-report';

export type PdfRun = { readonly ms: number; readonly grownMb: number };

const MEGABYTE = 1024 * 1024;
const WATCH_MS = 5;

const [, , what, folder = '', caseId = ''] = process.argv;
const db = openDatabase(folder);
const store = fileStore(folder);
const record = readCase(db, caseId);
if (record === null) throw new Error(`There is no case ${caseId}.`);
const pictureOf = (sha256: string): string => store.derivedPath(sha256, 'print');

/** Two pictures to a page, nothing else. */
async function bare({ photos }: CaseRecord, out: Writable): Promise<void> {
  const doc = new PDFDocument({ autoFirstPage: false });
  doc.pipe(out);
  photos.forEach(({ sha256 }, index) => {
    if (index % 2 === 0) doc.addPage({ size: 'LETTER' });
    doc.image(pictureOf(sha256), 72, index % 2 === 0 ? 60 : 420, { fit: [468, 320] });
  });
  doc.end();
  await finished(out);
}

async function report(of: CaseRecord, out: Writable): Promise<void> {
  const assessment = assess({ record: of, seed: 1 });
  start = performance.now();
  await buildReport(
    {
      record: of,
      assessment,
      recorder: null,
      photoFile: pictureOf,
      generatedAt: '2031-05-06T12:00:00.000Z',
      version: 'bench',
      logHead: 'b'.repeat(64),
    },
    out,
  );
}

const write = what === 'bare' ? bare : report;
let start = performance.now();

// Fonts, modules and compiled code are there in a running app; the first document pays for them.
const warmUp = new PassThrough();
warmUp.resume();
await write({ ...record, photos: record.photos.slice(0, 2) }, warmUp);

globalThis.gc?.();
const before = process.memoryUsage().rss;
let peak = before;
const watch = setInterval(() => {
  peak = Math.max(peak, process.memoryUsage().rss);
}, WATCH_MS);
start = performance.now();
await write(record, createWriteStream(join(folder, `${what}.pdf`)));
const ms = performance.now() - start;
clearInterval(watch);
peak = Math.max(peak, process.memoryUsage().rss);
const run: PdfRun = { ms, grownMb: (peak - before) / MEGABYTE };
console.log(JSON.stringify(run));
