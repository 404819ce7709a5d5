import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createCase } from '~/db/cases';
import { fileStore } from '~/db/files';
import { openDatabase } from '~/db/open';
import { addPhotos, samplePicture } from './large-case';
import { medianMs, type Measurement } from './measurement';
import type { PdfRun } from './pdf-child';

const PHOTOS = 200;
const ROUNDS = 5;

/** Each document is written in a process of its own, so that one does not inherit the other's memory. */
function inChild(what: 'bare' | 'report', folder: string, caseId: string): PdfRun {
  const child = [
    '--import',
    'tsx',
    '--expose-gc',
    join('tests', 'bench', 'pdf-child.ts'),
    what,
    folder,
    caseId,
  ];
  const said = execFileSync(process.execPath, child, { encoding: 'utf8' });
  return JSON.parse(said.trim().split('\n').at(-1) ?? '') as PdfRun;
}

/** The whole report of a case with 200 photos against bare pdfkit placing the same pictures. */
export async function pdfPhotos(): Promise<readonly Measurement[]> {
  const folder = mkdtempSync(join(tmpdir(), 'flangemark-bench-'));
  try {
    const db = openDatabase(folder);
    const fields = { number: 'B-2', title: 'Photos', units: 'us', ruleSet: 'us-49cfr213' };
    const caseId = createCase(db, fields, { personId: null, name: 'Bench' });
    await addPhotos(db, fileStore(folder), caseId, await samplePicture(1600, 1200), PHOTOS);
    db.$client.close();
    const bare: PdfRun[] = [];
    const report: PdfRun[] = [];
    for (let round = 0; round < ROUNDS; round += 1) {
      bare.push(inChild('bare', folder, caseId));
      report.push(inChild('report', folder, caseId));
    }
    return [
      {
        name: 'pdf-photos',
        value: medianMs(report.map(({ ms }) => ms)) / medianMs(bare.map(({ ms }) => ms)),
        floor: 1.5,
        unit: `times bare pdfkit with the same ${PHOTOS} pictures`,
      },
      {
        name: 'pdf-memory',
        value: Math.max(...report.map(({ grownMb }) => grownMb)),
        floor: 150,
        unit: 'MB grown at most while the report is written',
      },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
