import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileStore } from '~/db/files';
import { openDatabase } from '~/db/open';
import { startAppOn } from '~/tests/browser/setup';
import { addLargeCase, addPhotos, samplePicture } from './large-case';
import { medianMs, type Measurement } from './measurement';

const SCREENS = [
  'overview',
  'scene',
  'train',
  'marks',
  'track',
  'wheels',
  'rails',
  'turnout',
  'photos',
  'explanations',
  'report',
  'log',
] as const;
const PHOTOS = 300;
const WARM = 5;
const ROUNDS = 25;

/** From the request to the last byte of the page. */
async function answerMs(address: string): Promise<number> {
  const start = performance.now();
  const response = await fetch(address);
  const body = await response.text();
  if (!response.ok) throw new Error(`${address} answered ${response.status}: ${body.slice(0, 200)}`);
  return performance.now() - start;
}

/**
 * Each screen of a large case against an empty page of the app, the safety notice, asked turn and
 * turn about so that both meet the same machine. The slowest screen counts. Pages are asked a few
 * times first: what is measured is a case being looked at, not the first page after a change.
 */
export async function screens(): Promise<readonly Measurement[]> {
  const folder = mkdtempSync(join(tmpdir(), 'flangemark-bench-'));
  const db = openDatabase(folder);
  const caseId = addLargeCase(db);
  await addPhotos(db, fileStore(folder), caseId, await samplePicture(640, 480), PHOTOS);
  db.$client.close();
  const app = await startAppOn(folder);
  try {
    const empty = `${app.address}/safety`;
    const ratios: { readonly screen: string; readonly ratio: number }[] = [];
    for (const screen of SCREENS) {
      const address = `${app.address}/cases/${caseId}/${screen}`;
      for (let i = 0; i < WARM; i += 1) {
        await answerMs(empty);
        await answerMs(address);
      }
      const bare: number[] = [];
      const page: number[] = [];
      for (let i = 0; i < ROUNDS; i += 1) {
        bare.push(await answerMs(empty));
        page.push(await answerMs(address));
      }
      ratios.push({ screen, ratio: medianMs(page) / medianMs(bare) });
    }
    const slowest = ratios.reduce((a, b) => (b.ratio > a.ratio ? b : a));
    return [
      {
        name: 'screens',
        value: slowest.ratio,
        floor: 3,
        unit: `times an empty page; slowest is ${slowest.screen}`,
        parts: ratios.map(({ screen, ratio }) => `${screen} ${ratio.toFixed(2)}`),
      },
    ];
  } finally {
    await app.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}
