import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CASE_PARTS } from '../../app/components/CaseTabs';
import { accessibilityProblems, openBrowser, startApp, type RunningApp } from './setup';

let app: RunningApp;
let browser: Browser;
let demo: string;

beforeAll(async () => {
  [app, browser] = await Promise.all([startApp({ demo: true }), openBrowser()]);
  const list = await (await fetch(app.address)).text();
  demo = /\/cases\/[0-9A-Z]{26}/.exec(list)?.[0] ?? '';
  expect(demo).not.toBe('');
});

afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

const LOOKS = [
  { name: 'desk, light', viewport: { width: 1280, height: 900 }, colorScheme: 'light' },
  { name: 'phone, night', viewport: { width: 390, height: 844 }, colorScheme: 'dark' },
] as const;

describe.each(LOOKS)('on a $name', ({ viewport, colorScheme }) => {
  const pages = [
    '/',
    '/cases/new',
    '/safety',
    '/methods',
    ...CASE_PARTS.map((part) => `CASE/${part.toLowerCase()}`),
    'CASE/records/vehicle/new',
    'CASE/findings/gaugeWidest',
    ...['consist', 'stations', 'recorder', 'line'].map((kind) => `CASE/import/${kind}`),
    ...['train/forces', 'track/limits', 'contact', 'explanations/judgements'].map((part) => `CASE/${part}`),
    ...['new', 'file', 'pins', 'shapes', 'shapes/new', 'photo'].map((part) => `CASE/traces/${part}`),
  ];

  let page: Page;
  beforeAll(async () => {
    page = await (await browser.newContext({ viewport, colorScheme })).newPage();
  });
  afterAll(() => page.context().close());

  it.each(pages)('%s meets WCAG 2.2 AA and fits the screen', async (path) => {
    const answer = await page.goto(app.address + path.replace('CASE', demo));
    expect(answer?.status()).toBe(200);
    expect(await accessibilityProblems(page)).toEqual([]);
    const excess = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(excess).toBeLessThanOrEqual(0);
  });
});
