import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, startApp, type RunningApp } from './setup';

let app: RunningApp;
let browser: Browser;

beforeAll(async () => {
  [app, browser] = await Promise.all([startApp(), openBrowser()]);
});

afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

/** With JavaScript a page changes in place, so what is awaited is the new heading. */
const heading = (page: Page, name: string | RegExp) =>
  page.getByRole('heading', { level: 1, name }).waitFor();

async function openCase(page: Page, number: string): Promise<void> {
  await page.goto(`${app.address}/cases/new`);
  await page.getByLabel('Case number').fill(number);
  await page.getByRole('button', { name: 'Open this case' }).click();
  await page.getByRole('alert').waitFor();
  expect(await page.getByLabel('Case number').inputValue()).toBe(number);
  await page.getByLabel('Title').fill('Two cars off at the north switch');
  await page.getByRole('button', { name: 'Open this case' }).click();
  await heading(page, 'Scene');
}

async function addPerson(page: Page): Promise<void> {
  await page.locator('#person').getByRole('link', { name: 'Add' }).click();
  await heading(page, 'New: person');
  await page.getByLabel('Name').fill('A. Rowan');
  await page.getByLabel('Role').selectOption('investigator');
  await page.getByRole('button', { name: 'Add this person' }).click();
  await page.getByRole('link', { name: 'A. Rowan' }).waitFor();
  await page.getByLabel('Entering as').selectOption({ label: 'A. Rowan' });
  await page.getByRole('button', { name: 'Set', exact: true }).click();
  await page.waitForLoadState('networkidle');
}

async function addReadings(page: Page): Promise<void> {
  const form = page.locator('#readings form');
  await form.getByLabel('Air temperature').fill('72');
  await form.getByLabel('Rail temperature', { exact: true }).fill('seventy');
  await form.getByRole('button', { name: 'Keep these readings' }).click();
  await page.getByText('1 reading kept.').waitFor();
  // The good one is kept, the bad one is still there and says what to enter instead.
  const rail = form.getByLabel('Rail temperature', { exact: true });
  expect(await rail.inputValue()).toBe('seventy');
  expect(await rail.getAttribute('aria-invalid')).toBe('true');
  expect(await form.getByLabel('Air temperature').inputValue()).toBe('');
  await rail.fill('31 °C');
  await form.getByRole('button', { name: 'Keep these readings' }).click();
  await form.getByRole('link', { name: '31 °C' }).waitFor();
}

async function correctReading(page: Page): Promise<void> {
  await page.locator('#readings').getByRole('link', { name: '72 °F' }).click();
  await heading(page, 'Air temperature');
  expect(await page.getByRole('definition').filter({ hasText: '72' }).count()).toBeGreaterThan(0);
  await page.getByLabel('Air temperature').fill('74');
  await page.getByRole('button', { name: 'Keep the correction' }).click();
  await page.getByText('Say why').waitFor();
  expect(await page.getByLabel('Air temperature').inputValue()).toBe('74');
  await page.getByLabel('Why it is corrected').fill('misread the scale');
  await page.getByRole('button', { name: 'Keep the correction' }).click();
  await page.getByText('Reason: misread the scale').waitFor();
  expect(await page.getByRole('link', { name: '72 °F' }).count()).toBe(1);
}

async function checkLog(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Log', exact: true }).click();
  await heading(page, 'Log');
  await page.getByText('Unbroken.').waitFor();
  const newest = page.locator('.log__entry').first();
  const text = await newest.innerText();
  expect(text).toContain('Corrected a reading');
  expect(text).toContain('72 °F');
  expect(text).toContain('74 °F (misread the scale)');
  expect(text).toContain('entered as A. Rowan');
}

describe.each([
  { name: 'with JavaScript', javaScriptEnabled: true },
  { name: 'without JavaScript', javaScriptEnabled: false },
])('$name', ({ javaScriptEnabled }) => {
  it('opens a case, adds a person and readings, corrects one and finds all of it in the log', async () => {
    const context = await browser.newContext({ javaScriptEnabled });
    const page = await context.newPage();
    const complaints: string[] = [];
    page.on('pageerror', (error) => complaints.push(error.message));
    page.on('console', (message) => {
      // A refused form is answered with 422, which browsers report as an error of the network.
      if (message.type() === 'error' && !message.text().includes('422')) complaints.push(message.text());
    });
    await openCase(page, javaScriptEnabled ? 'T-1' : 'T-2');
    await addPerson(page);
    await addReadings(page);
    await correctReading(page);
    await checkLog(page);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
