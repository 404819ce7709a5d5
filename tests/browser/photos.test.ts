import { createHash } from 'node:crypto';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accessibilityProblems, openBrowser, startApp, type RunningApp } from './setup';

let app: RunningApp;
let browser: Browser;
let folder: string;
/** Name → path. */
const files: Record<string, string> = {};

async function file(name: string, content: Buffer): Promise<void> {
  const path = join(folder, name);
  await writeFile(path, content);
  files[name] = path;
}

/** Each with its own hash: the same picture twice in a case is refused. */
const picture = (red: number, width = 1200, height = 800): Promise<Buffer> =>
  sharp({ create: { width, height, channels: 3, background: { r: red, g: 120, b: 90 } } })
    .withExif({ IFD2: { DateTimeOriginal: '2026:05:06 15:24:33' } })
    .jpeg()
    .toBuffer();

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'flangemark-photos-'));
  for (const [at, name] of ['one.jpg', 'Weiche Süd (2).jpg', 'three.jpg'].entries()) {
    await file(name, await picture(40 * at));
  }
  await file('notes.jpg', Buffer.from('Walked back from the first derailed wheel.'));
  // As much as no phone gives, and a picture by its first bytes.
  await file('large.jpg', Buffer.concat([await picture(200), Buffer.alloc(60_000_000, 1)]));
  [app, browser] = await Promise.all([startApp(), openBrowser()]);
});

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  await rm(folder, { recursive: true, force: true });
});

async function newPhotos(page: Page, number: string): Promise<string> {
  await page.goto(`${app.address}/cases/new`);
  await page.getByLabel('Case number').fill(number);
  await page.getByLabel('Title').fill('Car off at the grain elevator');
  await page.getByRole('button', { name: 'Open this case' }).click();
  await page.waitForURL(/\/scene/);
  return page.url().replace(/\/scene.*/, '/photos');
}

async function send(page: Page, ...names: readonly string[]): Promise<void> {
  await page.getByLabel('Photos, as many').setInputFiles(names.map((name) => files[name]!));
  await page.getByRole('button', { name: 'Keep these photos' }).click();
}

async function withPage(javaScriptEnabled: boolean, work: (page: Page) => Promise<void>): Promise<void> {
  const context = await browser.newContext({ javaScriptEnabled });
  try {
    await work(await context.newPage());
  } finally {
    await context.close();
  }
}

const sha256 = (content: Buffer): string => createHash('sha256').update(content).digest('hex');

/** Where the one photo of a case is shown, and its id. */
async function openFirst(page: Page): Promise<string> {
  await page.locator('.photo__picture').first().click();
  await page.getByRole('button', { name: 'Save what is said about it' }).waitFor();
  return new URL(page.url()).searchParams.get('photo') ?? '';
}

describe.each([
  { name: 'with JavaScript', javaScriptEnabled: true, number: 'P-1' },
  { name: 'without JavaScript', javaScriptEnabled: false, number: 'P-2' },
])('photos $name', ({ javaScriptEnabled, number }) => {
  it('keeps the pictures of a batch and says what is wrong with each of the others', () =>
    withPage(javaScriptEnabled, async (page) => {
      await page.goto(await newPhotos(page, number));
      await send(page, 'one.jpg', 'notes.jpg', 'Weiche Süd (2).jpg', 'large.jpg', 'three.jpg');
      const alert = page.getByRole('alert');
      await alert.waitFor();
      const said = await alert.innerText();
      expect(said).toContain('“notes.jpg” cannot be read as a picture');
      expect(said).toMatch(/“large\.jpg” has 60\.\d MB; the most that is taken of one photo is 50 MB/);
      expect(await alert.getByRole('listitem').count()).toBe(2);
      await page.getByText('3 photos kept.').waitFor();
      expect(await page.locator('.photo').count()).toBe(3);
      expect(await page.locator('.photos').innerText()).toContain('Weiche Süd (2).jpg');

      await send(page, 'one.jpg');
      await page.getByText('“one.jpg” is already in this case').waitFor();
      expect(await page.locator('.photo').count()).toBe(3);
    }));

  it('asks for a file when none was chosen', () =>
    withPage(javaScriptEnabled, async (page) => {
      await page.goto(await newPhotos(page, `${number}-none`));
      await page.getByRole('button', { name: 'Keep these photos' }).click();
      await page.getByText('No file was chosen').waitFor();
      expect(await page.locator('.photo').count()).toBe(0);
    }));

  it('takes caption and time, keeps what was entered when a box is refused, removes and puts back', () =>
    withPage(javaScriptEnabled, async (page) => {
      const list = await newPhotos(page, `${number}-words`);
      await page.goto(list);
      await send(page, 'one.jpg');
      await page.getByText('1 photo kept.').waitFor();
      await openFirst(page);
      expect(await page.getByLabel('When (local time)').inputValue()).toBe('2026-05-06T15:24');
      await page.getByLabel('Caption').fill('High rail from above');
      await page.getByRole('button', { name: 'Save what is said about it' }).click();
      await page.getByRole('heading', { name: 'High rail from above' }).waitFor();

      await page.getByText('Remove this photo …').click();
      await page.getByRole('button', { name: 'Remove this photo' }).click();
      await page.getByText('Say why').waitFor();
      await page.getByLabel('Reason').fill('shows another train');
      await page.getByRole('button', { name: 'Remove this photo' }).click();
      await page.getByText('This photo was removed: shows another train').waitFor();
      await page.goto(list);
      expect(await page.locator('.photo').innerText()).toContain('Removed: shows another train');
      await openFirst(page);
      await page.getByRole('button', { name: 'Put it back' }).click();
      await page.getByText('Remove this photo …').waitFor();
    }));
});

describe('the files of photos', () => {
  it('are served as they came to their own case alone, and smaller for lists', () =>
    withPage(true, async (page) => {
      const list = await newPhotos(page, 'P-files');
      await page.goto(list);
      await send(page, 'Weiche Süd (2).jpg');
      await page.getByText('1 photo kept.').waitFor();
      const original = await sharp(files['Weiche Süd (2).jpg']!, { failOn: 'none' }).metadata();
      expect(original.width).toBe(1200);
      const shown = await page.locator('.photo__hash').innerText();
      const id = await openFirst(page);

      const whole = await fetch(`${list}/${id}/file`);
      const bytes = Buffer.from(await whole.arrayBuffer());
      expect(sha256(bytes)).toBe(shown.trim());
      expect(whole.headers.get('content-type')).toBe('image/jpeg');
      expect(whole.headers.get('content-disposition')).toBe(
        `inline; filename="Weiche S_d _2_.jpg"; filename*=UTF-8''Weiche%20S%C3%BCd%20%282%29.jpg`,
      );
      expect(whole.headers.get('cache-control')).toContain('immutable');
      expect(whole.headers.get('x-content-type-options')).toBe('nosniff');

      const thumb = await fetch(`${list}/${id}/thumb`);
      expect(thumb.headers.get('content-type')).toBe('image/jpeg');
      expect((await sharp(Buffer.from(await thumb.arrayBuffer())).metadata()).width).toBe(360);
      const print = await fetch(`${list}/${id}/thumb?size=print`);
      expect((await sharp(Buffer.from(await print.arrayBuffer())).metadata()).width).toBe(1200);

      const other = await newPhotos(page, 'P-other');
      for (const part of ['file', 'thumb']) {
        expect((await fetch(`${other}/${id}/${part}`)).status).toBe(404);
      }
    }));

  it('have no accessibility problem, in the list and one by one', () =>
    withPage(true, async (page) => {
      await page.goto(await newPhotos(page, 'P-access'));
      await send(page, 'one.jpg', 'notes.jpg');
      await page.getByRole('alert').waitFor();
      expect(await accessibilityProblems(page)).toEqual([]);
      await openFirst(page);
      expect(await accessibilityProblems(page)).toEqual([]);
    }));
});
