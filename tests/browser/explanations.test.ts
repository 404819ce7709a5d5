import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, startApp, type RunningApp } from './setup';

let app: RunningApp;
let browser: Browser;
let page: Page;
let address: string;

beforeAll(async () => {
  app = await startApp({ demo: true });
  browser = await openBrowser();
  const context = await browser.newContext({ javaScriptEnabled: false });
  page = await context.newPage();
  await page.goto(app.address);
  const href = await page.locator('a[href^="/cases/0"]').first().getAttribute('href');
  address = `${app.address}${href?.replace(/\/overview$/, '')}/explanations`;
});

afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

describe('explanations, without JavaScript', () => {
  it('leads from the verdict to a fact, its witnesses and the reading behind one', async () => {
    await page.goto(address);
    const verdict = page.locator('#verdict');
    expect(await verdict.innerText()).toContain('What happened is for the investigator to determine');
    await page.getByRole('link', { name: 'The wheel was light' }).first().click();
    const fact = page.locator('#fact-wheelLight');
    expect(await fact.innerText()).toContain('Not looked for');
    await fact.locator('a[href*="/readings/"]').first().click();
    expect(page.url()).toContain('/readings/');
    expect(await page.locator('main').innerText()).toContain('As entered');
  });

  it('asks for a reason before an explanation is excluded, and keeps what was chosen', async () => {
    await page.goto(`${address}?open=vandalism`);
    const other = page.locator('#explanation-vandalism');
    await other.getByLabel('Standing').selectOption('excluded');
    await other.getByRole('button', { name: 'Keep' }).click();
    expect(await other.innerText()).toContain('Write the reason');
    expect(await other.getByLabel('Standing').inputValue()).toBe('excluded');
    await other.getByLabel('Reason, and what it rests on').fill('Lock and points as left; nothing cut.');
    await other.getByRole('button', { name: 'Keep' }).click();
    expect(await other.innerText()).toContain('Excluded');
    expect(await other.innerText()).toContain('nothing cut');
  });

  it('shows the delivered answer beside the one with a changed judgement', async () => {
    await page.goto(`${address}/judgements?about=flangeCrossedHead`);
    const row = page.locator('li.finding').first();
    await row.locator('summary').click();
    await row.getByLabel('Probability').fill('1');
    await row.getByLabel('Reason').fill('Sand on the rail that day');
    await row.getByRole('button', { name: 'Keep the change' }).click();
    expect(await row.innerText()).toContain('between 0.001 and 0.999');
    expect(await row.getByLabel('Reason').inputValue()).toBe('Sand on the rail that day');
    await row.getByLabel('Probability').fill('0.5');
    await row.getByRole('button', { name: 'Keep the change' }).click();
    await page.goto(address);
    expect(await page.locator('#verdict').innerText()).toContain('With the judgements as delivered');
  });
});
