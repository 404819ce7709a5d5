import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accessibilityProblems, openBrowser, startApp, type RunningApp } from './setup';

let app: RunningApp;
let browser: Browser;

beforeAll(async () => {
  [app, browser] = await Promise.all([startApp(), openBrowser()]);
});

afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

const sample = (name: string): Buffer =>
  readFileSync(new URL(`../../fixtures/samples/${name}`, import.meta.url));

/** Opens a new case and answers its address. */
async function newCase(page: Page, number: string): Promise<string> {
  await page.goto(`${app.address}/cases/new`);
  await page.getByLabel('Case number').fill(number);
  await page.getByLabel('Title').fill('Car off in the yard lead');
  await page.getByLabel('Railroad').fill('Invented Short Line');
  await page.getByRole('button', { name: 'Open this case' }).click();
  await page.waitForURL(/\/scene/);
  return page.url().replace(/\/scene.*/, '');
}

async function choose(page: Page, address: string, name: string, buffer: Buffer): Promise<void> {
  await page.goto(address, { waitUntil: 'networkidle' });
  await page.getByLabel('CSV file').setInputFiles({ name, mimeType: 'text/csv', buffer });
  await page.getByRole('button', { name: 'Read this file' }).click();
}

async function withPage(javaScriptEnabled: boolean, work: (page: Page) => Promise<void>): Promise<void> {
  const context = await browser.newContext({ javaScriptEnabled });
  try {
    await work(await context.newPage());
  } finally {
    await context.close();
  }
}

const vehicles = (page: Page) => page.getByRole('table', { name: 'Vehicles from the head end' });

describe('importing a consist', () => {
  it.each([
    ['with JavaScript', true, 'I-1'],
    ['without JavaScript', false, 'I-2'],
  ])('goes from file to columns to preview to the train, %s', (_, javaScript, number) =>
    withPage(javaScript, async (page) => {
      const address = await newCase(page, number);
      await choose(page, `${address}/import/consist`, 'consist.csv', sample('consist.csv'));
      await page.getByRole('heading', { name: 'Step 2 of 3' }).waitFor();
      expect(await page.getByLabel('What “Initial” holds').inputValue()).toBe('mark');
      expect(await page.getByLabel('Unit of bare numbers in “Gross weight (lb)”').inputValue()).toBe('lb');
      if (javaScript) expect(await accessibilityProblems(page)).toEqual([]);
      await page.getByRole('button', { name: 'Show what would be imported' }).click();
      await page.getByRole('heading', { name: 'Step 3 of 3' }).waitFor();
      await page.getByText('8 vehicles with 40 readings would be imported').waitFor();
      if (javaScript) expect(await accessibilityProblems(page)).toEqual([]);

      // Nothing is in the case until it is confirmed.
      const confirm = page.url();
      await page.goto(`${address}/train`);
      await page.getByText('No vehicle yet').waitFor();
      await page.goto(confirm, { waitUntil: 'networkidle' });
      await page.getByRole('button', { name: /^Import 8 vehicles/ }).click();
      await page.getByText('Imported 8 vehicles with 40 readings.').waitFor();
      await vehicles(page)
        .getByRole('row', { name: /6 · MARL 60128 .*61200 lb.*First to derail/ })
        .waitFor();

      // What was imported once cannot be imported again.
      await page.goto(confirm);
      await page.getByText('already imported or dropped').waitFor();
    }),
  );

  it('names every bad row with its column, imports nothing, and knows the columns the next time', () =>
    withPage(true, async (page) => {
      const address = await newCase(page, 'I-3');
      const bad = [
        'Platz;Mark;Number;Type;Gross weight (lb)',
        '1;ABLE;10;Locomotive;268000',
        '2;ABLE;11;Zeppelin;61000',
        '3;;12;Tank car;-5',
        '3;ABLE;13;Tank car;61000',
      ];
      await choose(page, `${address}/import/consist`, 'bad.csv', Buffer.from(bad.join('\n')));
      await page.getByRole('button', { name: 'Show what would be imported' }).click();
      await page.getByText('Say which column holds “Position from the head end”').waitFor();
      await page.getByLabel('What “Platz” holds').selectOption('position');
      await page.getByRole('button', { name: 'Show what would be imported' }).click();
      const problems = page.getByRole('table', { name: /Rows that cannot be imported/ });
      await problems.getByRole('row', { name: /^3 Type Enter one of/ }).waitFor();
      await problems.getByRole('row', { name: /^4 Mark/ }).waitFor();
      await problems.getByRole('row', { name: /^4 Gross weight/ }).waitFor();
      expect(await page.getByRole('button', { name: /^Import/ }).count()).toBe(0);
      await page.getByRole('button', { name: 'Drop this file' }).click();
      await page.getByText('No vehicle yet').waitFor();

      const good = [bad[0], bad[1], '2;ABLE;11;Tank car;61000'].join('\n');
      await choose(page, `${address}/import/consist`, 'good.csv', Buffer.from(good));
      await page.getByLabel('What “Platz” holds').selectOption('position');
      await page.getByRole('button', { name: 'Show what would be imported' }).click();
      await page.getByRole('button', { name: /^Import 2 vehicles/ }).click();
      await page.getByText('Imported 2 vehicles').waitFor();
      const next = await newCase(page, 'I-4');
      await choose(page, `${next}/import/consist`, 'good.csv', Buffer.from(good));
      expect(await page.getByLabel('What “Platz” holds').inputValue()).toBe('position');
    }));

  it('refuses a file that is no table, is not UTF-8, has one column, or was not chosen', () =>
    withPage(true, async (page) => {
      const address = `${await newCase(page, 'I-5')}/import/consist`;
      const alert = page.getByRole('alert');
      await page.goto(address, { waitUntil: 'networkidle' });
      await page.getByRole('button', { name: 'Read this file' }).click();
      await alert.filter({ hasText: 'Choose the CSV file first' }).waitFor();
      const cases: readonly (readonly [Buffer, RegExp])[] = [
        [Buffer.from('Mark;Number\n"open;1\n'), /quotation mark that is not closed/],
        [Buffer.from([0x4d, 0x2c, 0x4e, 0x0a, 0xe9, 0x2c, 0x31, 0x0a]), /not written in UTF-8/],
        [Buffer.from('one\ntwo\n'), /Only one column/],
      ];
      for (const [buffer, words] of cases) {
        await choose(page, address, 'file.csv', buffer);
        await alert.filter({ hasText: words }).waitFor();
      }
    }));

  it('answers an upload of 60 MB with how much is taken, and keeps nothing of it', () =>
    withPage(false, async (page) => {
      const address = await newCase(page, 'I-8');
      const body = new FormData();
      body.set('file', new Blob([Buffer.alloc(60_000_000, 'a,b\n')]), 'large.csv');
      const response = await fetch(`${address}/import/consist`, { method: 'POST', body });
      expect(response.status).toBe(422);
      expect(await response.text()).toContain('larger than 20 MB');
      await page.goto(`${address}/train`);
      await page.getByText('No vehicle yet').waitFor();
    }));
});

describe('importing stations and a recorder', () => {
  it('brings stations to the sheet and refuses to bring them twice', () =>
    withPage(true, async (page) => {
      const address = await newCase(page, 'I-6');
      const bring = async () => {
        await choose(page, `${address}/import/stations`, 'stations.csv', sample('stations.csv'));
        await page.getByRole('button', { name: 'Show what would be imported' }).click();
      };
      await bring();
      await page.getByRole('button', { name: /^Import 12 stations/ }).click();
      await page.getByText(/Imported 12 stations with \d+ readings/).waitFor();
      await page.getByRole('region', { name: 'Station sheet' }).getByRole('link', { name: '-10' }).waitFor();
      await bring();
      await page.getByText('The case already has a station -10').waitFor();
    }));

  it('keeps the recorder run, says the speed at the first emergency sample, and removes it with a reason', () =>
    withPage(true, async (page) => {
      const address = await newCase(page, 'I-7');
      await choose(page, `${address}/import/recorder`, 'recorder.csv', sample('recorder.csv'));
      await page.getByLabel('Seconds to add to its clock').fill('two');
      await page.getByRole('button', { name: 'Show what would be imported' }).click();
      await page.getByText('Enter seconds, such as').waitFor();
      await page.getByLabel('Seconds to add to its clock').fill('-2.5');
      await page.getByLabel('Name of this run').fill('Lead unit');
      await page.getByRole('button', { name: 'Show what would be imported' }).click();
      await page.getByRole('button', { name: /^Import 90 samples/ }).click();
      const run = page.getByRole('article', { name: 'Lead unit' });
      await run
        .getByText(/mph \(sample 59, 58/)
        .first()
        .waitFor();
      await run.getByLabel('Distance back from where it stopped').fill('100 ft');
      await run.getByRole('button', { name: 'Look up' }).click();
      await run.getByText(/100 ft before it stopped: \d/).waitFor();
      expect(await accessibilityProblems(page)).toEqual([]);
      await run.getByText('Remove this run …').click();
      await run.getByRole('button', { name: 'Remove this run' }).click();
      await run.getByText('Say why').waitFor();
      await run.getByLabel('Reason').fill('another train');
      await run.getByRole('button', { name: 'Remove this run' }).click();
      await run.getByText('Removed: another train').waitFor();
      await run.getByRole('button', { name: 'Put it back' }).click();
      await run
        .getByText(/mph \(sample 59/)
        .first()
        .waitFor();
    }));
});

describe('importing the grades and curves of the line', () => {
  const rows = (page: Page) => page.getByRole('table', { name: /^Grades and curves of the line/ });

  it('goes from a file to the train, where its grade at the POD is found', () =>
    withPage(true, async (page) => {
      const address = await newCase(page, 'I-9');
      await choose(page, `${address}/import/line`, 'line.csv', sample('line.csv'));
      expect(await page.getByLabel('Unit of bare numbers in “Grade (%)”').inputValue()).toBe('%');
      expect(await accessibilityProblems(page)).toEqual([]);
      await page.getByRole('button', { name: 'Show what would be imported' }).click();
      await page.getByRole('button', { name: /^Import 8 rows of the line/ }).click();
      await page.getByText(/Imported 8 rows of the line/).waitFor();
      await rows(page)
        .getByRole('row', { name: /[-−]1\.35/ })
        .waitFor();
      expect(await accessibilityProblems(page)).toEqual([]);
    }));

  it('takes rows pasted from a spreadsheet, without JavaScript, and keeps them where they cannot be read', () =>
    withPage(false, async (page) => {
      const address = await newCase(page, 'I-10');
      await page.goto(`${address}/import/line`);
      await page.getByText('Or paste the rows from a spreadsheet').click();
      const box = page.getByLabel('Rows, with the names of the columns above them');
      await box.fill('one\ntwo\n');
      await page.getByRole('button', { name: 'Read these rows' }).click();
      await page.getByText(/Only one column/).waitFor();
      expect(await box.inputValue()).toContain('two');
      await box.fill('From POD (ft)\tTo (ft)\tGrade (%)\n-2000\t-500\t0.2\n-500\t800\t-0.6\n');
      await page.getByRole('button', { name: 'Read these rows' }).click();
      await page.getByRole('button', { name: 'Show what would be imported' }).click();
      await page.getByRole('button', { name: /^Import 2 rows of the line/ }).click();
      await rows(page)
        .getByRole('row', { name: /[-−]0\.6/ })
        .waitFor();
    }));
});
