import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, startApp, type RunningApp } from './setup';

let app: RunningApp;
let browser: Browser;
let demo: string;

beforeAll(async () => {
  [app, browser] = await Promise.all([startApp({ demo: true }), openBrowser()]);
  const list = await (await fetch(app.address)).text();
  demo = `${app.address}/cases/${/\/cases\/([0-9A-Z]{26})/.exec(list)?.[1]}`;
});

afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

const sections = (page: Page) => page.locator('#point-sections');

describe('flange at the point', () => {
  it('is drawn for a desk and for a phone, says its numbers in words, and never scrolls sideways', async () => {
    const widths: number[] = [];
    for (const [width, colorScheme] of [
      [1280, 'light'],
      [390, 'dark'],
    ] as const) {
      const page = await browser.newPage({ viewport: { width, height: 900 }, colorScheme });
      await page.goto(`${demo}/turnout`);
      const picture = sections(page).locator('img');
      await picture.scrollIntoViewIfNeeded();
      const alt = await picture.getAttribute('alt');
      expect(alt).toContain('1 ft behind the tip: square:');
      expect(alt).toMatch(/10 mrad: −?\d/);
      await expect
        .poll(() => picture.evaluate((image) => (image as HTMLImageElement).naturalWidth))
        .toBeGreaterThan(0);
      widths.push(await picture.evaluate((image) => (image as HTMLImageElement).naturalWidth));
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      await page.close();
    }
    expect(widths).toEqual([1120, 360]);
  });

  it('stands on the rail said to be the stock rail, chosen without JavaScript', async () => {
    const context = await browser.newContext({ javaScriptEnabled: false });
    const page = await context.newPage();
    await page.goto(`${demo}/turnout`);
    expect(await sections(page).innerText()).toContain('The rail said to be the stock rail of this turnout.');

    await page.goto(`${demo}/rails`);
    await page.getByRole('link', { name: /940 ft before/ }).click();
    await page.getByRole('link', { name: 'Change what is said of it' }).click();
    await page.getByLabel('Stock rail of').selectOption({ label: 'Not said' });
    await page.locator('button.button--main').first().click();
    await page.goto(`${demo}/turnout`);
    expect(await sections(page).innerText()).toContain(
      'No rail is said to be the stock rail of this turnout',
    );
    await context.close();
  });
});
