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

async function newCase(page: Page, number: string): Promise<string> {
  await page.goto(`${app.address}/cases/new`);
  await page.getByLabel('Case number').fill(number);
  await page.getByLabel('Title').fill('Two axles off on the lead');
  await page.getByRole('button', { name: 'Open this case' }).click();
  await page.waitForURL(/\/scene/);
  return page.url().replace(/\/scene.*/, '');
}

async function addWheelset(page: Page, at: string, state: string): Promise<void> {
  await page.goto(`${at}/records/vehicle/new`);
  await page.getByLabel('Position from the head end').fill('17');
  await page.getByLabel('Reporting mark').fill('MARL');
  await page.getByLabel(/^Number/).fill('51882');
  await page.getByLabel(/^Type/).selectOption({ label: 'Covered hopper' });
  await page.getByRole('button', { name: 'Add this vehicle' }).click();
  await page.waitForURL(/\/train/);
  await page.goto(`${at}/records/wheelset/new`);
  await page.getByLabel(/^Vehicle/).selectOption({ index: 1 });
  await page.getByLabel('Axle, counted').fill('1');
  await page.getByLabel('State when read').selectOption({ label: state });
  await page.getByRole('button', { name: 'Add this wheelset' }).click();
  await page.waitForURL(/\/wheels/);
}

const box = (page: Page, label: string) => page.locator('#readings form').getByLabel(label, { exact: true });
const keep = (page: Page) =>
  page.locator('#readings').getByRole('button', { name: 'Keep these readings' }).click();
const finding = (page: Page, title: string) =>
  page.locator('#readings .finding').filter({ hasText: title }).first();

describe.each([
  { name: 'with JavaScript', javaScriptEnabled: true, number: 'W-1' },
  { name: 'without JavaScript', javaScriptEnabled: false, number: 'W-2' },
])('wheels $name', ({ javaScriptEnabled, number }) => {
  it('turns back-to-back readings into findings that lead back to them, and follows a correction', async () => {
    const context = await browser.newContext({ javaScriptEnabled });
    const page = await context.newPage();
    const at = await newCase(page, number);
    await addWheelset(page, at, 'Undisturbed');

    await box(page, 'Back-to-back, 0°').fill('53');
    await box(page, 'Back-to-back, 120°').fill('53 1/16');
    await box(page, 'Back-to-back, 240°').fill('35 1/16');
    await keep(page);
    await page.getByText('2 readings kept.').waitFor();
    // The slip is still in its box and says why; no swing is claimed from two places.
    expect(await box(page, 'Back-to-back, 240°').inputValue()).toBe('35 1/16');
    expect(await box(page, 'Back-to-back, 240°').getAttribute('aria-invalid')).toBe('true');
    expect(await finding(page, 'swing round the wheel').innerText()).toContain('Not measured');
    await box(page, 'Back-to-back, 240°').fill('53 1/16');
    await keep(page);
    await page.getByText('1 reading kept.').waitFor();

    const mean = finding(page, 'Back-to-back, mean');
    expect(await mean.innerText()).toMatch(/53\.04\d* ± 0\.0\d+ in \(k = 2\)/);
    expect(await finding(page, 'swing round the wheel').innerText()).toContain('±');
    expect(await page.locator('#readings svg[role="img"]').first().isVisible()).toBe(true);
    const before = await mean.locator('.finding__value').innerText();

    await mean.getByRole('link', { name: 'How it was found' }).click();
    await page.getByRole('heading', { level: 1, name: /Back-to-back, mean/ }).waitFor();
    expect(await page.getByRole('link', { name: '53 in', exact: true }).count()).toBe(1);
    await page.getByRole('link', { name: '53 in', exact: true }).click();
    await page.getByRole('heading', { level: 1, name: 'Back-to-back, 0°' }).waitFor();
    await page.locator('#correct-value').fill('53 1/4');
    await page.getByLabel('Why it is corrected').fill('read from the wrong end of the rod');
    await page.getByRole('button', { name: 'Keep the correction' }).click();
    await page.getByText('Reason: read from the wrong end of the rod').waitFor();

    await page.goto(`${at}/wheels`);
    expect(await page.locator('#readings').getByRole('link', { name: '53 1/4 in' }).count()).toBe(1);
    expect(await finding(page, 'Back-to-back, mean').locator('.finding__value').innerText()).not.toBe(before);
    await context.close();
  });

  it('takes further clock positions', async () => {
    const context = await browser.newContext({ javaScriptEnabled });
    const page = await context.newPage();
    await addWheelset(page, await newCase(page, `${number}-clock`), 'Undisturbed');
    await page.getByText('Other positions').click();
    await page.getByLabel('Position, degrees').first().fill('180');
    await box(page, 'Back-to-back, other position 1').fill('53 1/8');
    await keep(page);
    await page.getByRole('link', { name: /180°: 53 1\/8 in/ }).waitFor();
    await context.close();
  });

  it('keeps a go/no-go check a pass or fail, without a number', async () => {
    const context = await browser.newContext({ javaScriptEnabled });
    const page = await context.newPage();
    await addWheelset(page, await newCase(page, `${number}-check`), 'Undisturbed');
    await page.getByRole('link', { name: /Go\/no-go checks/ }).click();
    await box(page, 'Flange thickness check, Left').waitFor();
    await box(page, 'Flange thickness check, Left').selectOption({ label: 'Pass' });
    await box(page, 'Flange height check, Right').selectOption({ label: 'Fail' });
    await keep(page);
    await page.getByText('2 readings kept.').waitFor();
    const failed = await finding(page, 'Flange height check, right').innerText();
    expect(failed).toContain('Fails: The flange is lower than the condemning height');
    expect(failed).not.toContain('±');
    expect(await finding(page, 'Flange thickness check, left').innerText()).toContain('Passes');
    expect(await page.locator('#wheelsets').innerText()).toContain('1 beyond');
    await context.close();
  });
});

describe('wheels', () => {
  it('marks a disturbed wheelset and uses none of its readings', async () => {
    const context = await browser.newContext();
    const page = await context.newPage();
    await addWheelset(page, await newCase(page, 'W-off'), 'Disturbed by the derailment');
    expect(await page.locator('#wheelsets').innerText()).toContain('Disturbed: not used in findings');
    await box(page, 'Back-to-back, 0°').fill('53 5/8');
    await keep(page);
    await page.getByRole('link', { name: '53 5/8 in' }).waitFor();
    expect(await page.locator('#chosen').innerText()).toContain(
      'its readings are kept and not used in findings',
    );
    expect(await finding(page, 'Back-to-back, mean').innerText()).toContain('Not measured');
    await context.close();
  });

  it('has no accessibility problem with a wheelset open, on a phone too', async () => {
    const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
    const page = await context.newPage();
    await addWheelset(page, await newCase(page, 'W-access'), 'Undisturbed');
    await box(page, 'Back-to-back, 0°').fill('53');
    await keep(page);
    await page.getByText('1 reading kept.').waitFor();
    expect(await accessibilityProblems(page)).toEqual([]);
    const wider = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(wider).toBeLessThanOrEqual(0);
    await context.close();
  });
});
