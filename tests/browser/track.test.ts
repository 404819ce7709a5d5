import type { Browser, Locator, Page } from 'playwright-core';
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

/** Opens a new case and answers the address of its Track screen. */
async function newTrack(page: Page, number: string): Promise<string> {
  await page.goto(`${app.address}/cases/new`);
  await page.getByLabel('Case number').fill(number);
  await page.getByLabel('Title').fill('Car off in the yard lead');
  await page.getByRole('button', { name: 'Open this case' }).click();
  await page.waitForURL(/\/scene/);
  return page.url().replace(/\/scene.*/, '/track');
}

const box = (page: Page, column: string, row: string): Locator =>
  page.getByRole('region', { name: 'Station sheet' }).getByLabel(`${column}, ${row}`, { exact: true });

const focused = (page: Page): Promise<string | null> =>
  page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? null);

const paste = (into: Locator, text: string): Promise<void> =>
  into.evaluate((target, copied) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', copied);
    target.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
  }, text);

/** Opens the page and waits until its scripts have taken over. */
async function openLive(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.waitForFunction(() => {
    const region = document.querySelector('.station-sheet');
    return region !== null && Object.keys(region).some((key) => key.startsWith('__reactProps'));
  });
}

async function withPage(javaScriptEnabled: boolean, work: (page: Page) => Promise<void>): Promise<void> {
  const context = await browser.newContext({ javaScriptEnabled });
  try {
    await work(await context.newPage());
  } finally {
    await context.close();
  }
}

describe('the station sheet', () => {
  it('goes down with Enter, up with the arrow, right with Tab, and adds a row at the end', () =>
    withPage(true, async (page) => {
      await openLive(page, await newTrack(page, 'T-1'));
      await box(page, 'Gauge', 'new row 1').focus();
      await page.keyboard.type('56 1/2');
      await page.keyboard.press('Enter');
      expect(await focused(page)).toBe('Gauge, new row 2');
      await page.keyboard.press('ArrowUp');
      expect(await focused(page)).toBe('Gauge, new row 1');
      await page.keyboard.press('Tab');
      expect(await focused(page)).toBe('Crosslevel, new row 1');
      await box(page, 'Gauge', 'new row 5').focus();
      await page.keyboard.press('Enter');
      expect(await focused(page)).toBe('Gauge, new row 6');
      expect(await box(page, 'Gauge', 'new row 1').inputValue()).toBe('56 1/2');
    }));

  it('takes a pasted block, adds rows for it, marks the bad cell and keeps the rest', () =>
    withPage(true, async (page) => {
      const track = await newTrack(page, 'T-2');
      await openLive(page, track);
      const rows = Array.from({ length: 8 }, (_, i) => [
        String(i - 7),
        String((i - 7) * 15.5),
        i === 3 ? 'fifty-seven' : `56 ${i + 1}/16`,
        '2 1/4',
      ]);
      await paste(box(page, 'Station', 'new row 1'), rows.map((row) => `${row.join('\t')}\r\n`).join(''));
      await page.getByText('32 cells filled.').waitFor();
      expect(await box(page, 'Crosslevel', 'new row 8').inputValue()).toBe('2 1/4');
      await page.getByRole('button', { name: 'Save the sheet' }).click();
      await page.getByText('8 new stations, 23 new readings.').waitFor();
      const bad = box(page, 'Gauge', '-4');
      expect(await bad.inputValue()).toBe('fifty-seven');
      expect(await bad.getAttribute('aria-invalid')).toBe('true');
      expect(await box(page, 'Gauge', '-5').inputValue()).toBe('56 3/16');
      expect(await accessibilityProblems(page)).toEqual([]);

      await bad.fill('57');
      await page.getByRole('button', { name: 'Save the sheet' }).click();
      await page.getByText('1 new reading.').waitFor();
      await page.goto(track);
      const sheet = page.getByRole('region', { name: 'Station sheet' });
      expect(await sheet.getByRole('row', { name: /^-4 -62 57 2 1\/4/ }).count()).toBe(1);
      expect(await accessibilityProblems(page)).toEqual([]);
    }));

  it('shows further columns without scripts, keeps what was entered with them, and the address keeps them', () =>
    withPage(false, async (page) => {
      const track = await newTrack(page, 'T-8');
      await page.goto(track);
      expect(await box(page, 'Sound ties', 'new row 1').count()).toBe(0);
      await box(page, 'Station', 'new row 1').fill('0');
      await box(page, 'From POD', 'new row 1').fill('0');
      await page.locator('summary', { hasText: 'More columns' }).click();
      await page.getByRole('checkbox', { name: 'Sound ties in 39 ft' }).check();
      await page.getByRole('button', { name: 'Save, and show these columns' }).click();
      await page.getByText('1 new station, 1 new reading.').waitFor();
      expect(new URL(page.url()).searchParams.getAll('columns')).toEqual(['soundTies']);
      await box(page, 'Sound ties', '0').fill('9');
      await page.getByRole('button', { name: 'Save the sheet' }).click();
      await page.getByText('1 new reading.').waitFor();
      // With a reading in it the column comes of itself.
      await page.goto(`${track}?edit=1`);
      expect(await box(page, 'Sound ties', '0').inputValue()).toBe('9');
    }));

  it('goes to a station on another page and from there to the next page', () =>
    withPage(true, async (page) => {
      const track = await newTrack(page, 'T-5');
      await openLive(page, track);
      const layOut = page.locator('form', { has: page.getByLabel('Spacing') });
      await layOut.getByLabel('How many').fill('60');
      await layOut.getByLabel('Spacing').fill('10 ft');
      await layOut.getByRole('button').click();
      await page.getByText('61 new stations').waitFor();
      await page.goto(track);
      await page.getByText('Page 1 of 2 (61 stations)').waitFor();
      await page.getByLabel('Go to station').fill('-3');
      await page.getByRole('button', { name: 'Go', exact: true }).click();
      await page.getByText('Page 2 of 2').waitFor();
      await page.getByRole('link', { name: '-3', exact: true }).waitFor();
      await page.getByRole('link', { name: '← Before' }).click();
      await page.getByText('Page 1 of 2').waitFor();
      await page.getByRole('link', { name: '-60', exact: true }).waitFor();
    }));

  it('asks once for the reason when saved cells change, and keeps what stood there', () =>
    withPage(true, async (page) => {
      const track = await newTrack(page, 'T-3');
      await openLive(page, track);
      const layOut = page.locator('form', { has: page.getByLabel('Spacing') });
      await layOut.getByLabel('How many').fill('3');
      await layOut.getByRole('button').click();
      await page.getByText('4 new stations').waitFor();
      await openLive(page, `${track}?edit=1`);
      expect(await box(page, 'From POD', '-3').inputValue()).toBe('-46.5');
      await box(page, 'From POD', '-3').fill('-47');
      await box(page, 'From POD', '0').fill('');
      await page.getByRole('button', { name: 'Save the sheet' }).click();
      await page.getByRole('alert').waitFor();
      expect(await box(page, 'From POD', '-3').inputValue()).toBe('-47');
      await page.getByLabel('Reason').fill('tape had slipped');
      await page.getByRole('button', { name: 'Save the sheet' }).click();
      await page.getByText('2 changes.').waitFor();
      await page.goto(track);
      await page.getByRole('link', { name: '-3', exact: true }).click();
      await page.getByRole('link', { name: '-47 ft' }).click();
      await page.getByText('Reason: tape had slipped').waitFor();
      await page.getByRole('link', { name: '-46.5 ft' }).waitFor();
    }));

  it('is saved without JavaScript, and gives back what cannot be read', () =>
    withPage(false, async (page) => {
      const track = await newTrack(page, 'T-4');
      await page.goto(track);
      await box(page, 'Station', 'new row 1').fill('-1');
      await box(page, 'From POD', 'new row 1').fill(`-15' 6"`);
      await box(page, 'Gauge', 'new row 1').fill('56 3/0');
      await box(page, 'Crosslevel', 'new row 2').fill('1');
      await page.getByRole('button', { name: 'Save the sheet' }).click();
      await page.getByText('1 new station, 1 new reading.').waitFor();
      expect(await box(page, 'Gauge', '-1').inputValue()).toBe('56 3/0');
      // The row without a name is still a new one, with everything in it.
      expect(await box(page, 'Crosslevel', 'new row 2').inputValue()).toBe('1');
      expect(await box(page, 'Station', 'new row 2').getAttribute('aria-invalid')).toBe('true');
      await box(page, 'Gauge', '-1').fill('56 3/8');
      await box(page, 'Station', 'new row 2').fill('0');
      await page.getByRole('button', { name: 'Save the sheet' }).click();
      await page.getByText('1 new station, 2 new readings.').waitFor();
    }));
});
