import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { outlineOfShape } from '~/lib/shapes/shape';
import { referenceShape } from '~/lib/shapes';
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

const wheel = (): readonly (readonly [number, number])[] => {
  const shape = referenceShape('freight-narrow');
  if (shape === null) throw new Error('The shape is not there.');
  const { xMm, yMm } = outlineOfShape(shape, 0.5, 'whole');
  return Array.from(xMm, (x, i) => [x, yMm[i] ?? NaN] as const).filter(([, y]) => y > -18);
};

const INCH_MM = 25.4;

/** A new wheel with y first and pointing down, in inches: everything has to be found out or said. */
const turnedFile = (): Buffer =>
  Buffer.from(
    [
      '# left wheel',
      ...wheel().map(([x, y]) => `${(-y / INCH_MM).toFixed(5)};${(x / INCH_MM).toFixed(5)}`),
    ].join('\n'),
  );

/** Every pin 1/8 in from the next, over tip and tread; the upright back cannot be touched by pins. */
const pins = (): string => {
  const line = wheel();
  const highest = (x: number): number =>
    Math.max(...line.filter(([at]) => Math.abs(at - x) < 0.6).map(([, y]) => y));
  return Array.from({ length: 40 }, (_, i) => ((highest(1 + i * 3.175) + 20) / INCH_MM).toFixed(3)).join(
    '\n',
  );
};

async function withPage(javaScriptEnabled: boolean, work: (page: Page) => Promise<void>): Promise<void> {
  const context = await browser.newContext({ javaScriptEnabled });
  try {
    await work(await context.newPage());
  } finally {
    await context.close();
  }
}

/** A new case; answers its address. */
async function newCase(page: Page, number: string): Promise<string> {
  await page.goto(`${app.address}/cases/new`);
  await page.getByLabel('Case number').fill(number);
  await page.getByLabel('Title').fill('Car off in the yard lead');
  await page.getByLabel('Railroad').fill('Invented Short Line');
  await page.getByRole('button', { name: 'Open this case' }).click();
  await page.waitForURL(/\/scene/);
  return page.url().replace(/\/scene.*/, '');
}

/** A new case with one turnout; answers the address of the case. */
async function caseWithTurnout(page: Page, number: string): Promise<string> {
  const address = await newCase(page, number);
  await page.goto(`${address}/records/turnout/new`);
  await page.getByLabel('Name or number').fill('East switch');
  await page.getByLabel('Movement over the points').selectOption({ label: 'Facing' });
  await page.getByLabel('Point read').selectOption({ label: 'Right point' });
  await page.getByLabel('State when read').selectOption('undisturbed');
  await page.getByRole('button', { name: 'Add this turnout' }).click();
  await page.waitForURL(/\/turnout/);
  return address;
}

/** A new case with one wheelset; answers the address of the case. */
async function caseWithWheelset(page: Page, number: string): Promise<string> {
  const address = await newCase(page, number);
  await page.goto(`${address}/records/vehicle/new`);
  await page.getByLabel('Position from the head end').fill('17');
  await page.getByLabel('Reporting mark').fill('MARL');
  await page.getByLabel(/^Number/).fill('51882');
  await page.getByLabel(/^Type/).selectOption({ label: 'Covered hopper' });
  await page.getByRole('button', { name: 'Add this vehicle' }).click();
  await page.waitForURL(/\/train/);
  await page.goto(`${address}/records/wheelset/new`);
  await page.getByLabel(/^Vehicle/).selectOption({ index: 1 });
  await page.getByLabel('Axle, counted').fill('1');
  await page.getByLabel('State when read').selectOption('undisturbed');
  await page.getByRole('button', { name: 'Add this wheelset' }).click();
  await page.waitForURL(/\/wheels/);
  return address;
}

describe.each([
  ['with JavaScript', true, 'O'],
  ['without JavaScript', false, 'P'],
])('an outline, %s', (_, javaScript, prefix) => {
  it('comes from a file, is looked at, kept, moved by hand, removed and put back', () =>
    withPage(javaScript, async (page) => {
      const address = await caseWithWheelset(page, `${prefix}-1`);
      await page.getByRole('link', { name: 'Add an outline, left wheel' }).click();
      await page.getByRole('button', { name: 'Go on' }).click();
      await page.getByRole('heading', { name: 'Step 1 of 2' }).waitFor();
      const file = { name: 'left.txt', mimeType: 'text/plain', buffer: turnedFile() };
      await page.getByLabel('File with the points').setInputFiles(file);
      await page.getByRole('button', { name: 'Read this file' }).click();
      await page.getByRole('heading', { name: 'Step 2 of 2' }).waitFor();
      expect(await page.getByLabel('Numbers are in').inputValue()).toBe('in');
      expect(await page.getByLabel('x, across').inputValue()).toBe('1');
      expect(await page.getByLabel('Turn it upside down').isChecked()).toBe(true);
      if (javaScript) expect(await accessibilityProblems(page)).toEqual([]);

      // The picture follows the choice; nothing is in the case until it is kept.
      await page.getByLabel('Numbers are in').selectOption('mm');
      if (!javaScript) await page.getByRole('button', { name: 'Draw it again' }).click();
      await page.getByText('Choose the other unit').waitFor();
      await page.getByLabel('Numbers are in').selectOption('in');
      if (!javaScript) await page.getByRole('button', { name: 'Draw it again' }).click();
      await page.getByText(/^\d+ points, 145\.\d mm wide/).waitFor();
      await page.getByRole('button', { name: 'Keep this outline' }).click();
      await page.getByRole('heading', { name: 'What is taken from it' }).waitFor();
      await page.getByRole('row', { name: /^Flange height 1\.00\d* ± 0\.0\d+ in/ }).waitFor();
      if (javaScript) expect(await accessibilityProblems(page)).toEqual([]);

      const outline = page.url().replace(/\?.*/, '');
      await page.getByLabel('Move up, mm').fill('2.54');
      await page.getByRole('button', { name: 'Keep it so' }).click();
      await page.getByText('Say why: a few words').waitFor();
      expect(await page.getByLabel('Move up, mm').inputValue()).toBe('2.54');
      await page.getByLabel('Reason for moving it').fill('Tread pushed in');
      await page.getByRole('button', { name: 'Keep it so' }).click();
      await page.getByText('The outline lies as you placed it.').waitFor();
      await page.getByRole('row', { name: /^Flange height 1\.10\d* ± / }).waitFor();

      await page.getByText('Remove this outline …').click();
      await page.getByLabel('Reason', { exact: true }).fill('The other wheel');
      await page.getByRole('button', { name: 'Remove this outline' }).click();
      await page.getByText('The other wheel').first().waitFor();
      await page.getByRole('button', { name: 'Put it back' }).click();
      await page.getByText('The outline is back.').waitFor();

      await page.goto(`${address}/wheels`);
      await page.getByRole('link', { name: 'Left wheel', exact: true }).waitFor();
      await page.goto(`${address}/log`);
      await page.getByText('Unbroken.').waitFor();
      await page.getByText('Placed by hand').first().waitFor();
      expect(outline).toMatch(/\/traces\/[0-9A-Z]{26}$/);
    }));

  it('is typed pin by pin, and what cannot be read says which pin', () =>
    withPage(javaScript, async (page) => {
      const address = await caseWithWheelset(page, `${prefix}-2`);
      await page.getByRole('link', { name: 'Add an outline, right wheel' }).click();
      await page.getByLabel(/Typed from a pin gauge/).check();
      await page.getByRole('button', { name: 'Go on' }).click();
      await page.getByRole('heading', { name: 'The pins' }).waitFor();
      await page.getByLabel('From one pin to the next').fill('1/8');
      const typed = pins();
      await page.getByLabel('How far each pin stands out').fill(typed.replace(/\n/, '\nmuch\n'));
      await page.getByRole('button', { name: 'Keep this outline' }).click();
      await page.getByRole('alert').filter({ hasText: 'Pin 2' }).waitFor();
      expect(await page.getByLabel('From one pin to the next').inputValue()).toBe('1/8');
      await page.getByLabel('How far each pin stands out').fill(typed);
      await page.getByRole('button', { name: 'Draw it', exact: true }).click();
      await page.getByText(/^40 points/).waitFor();
      await page.getByRole('button', { name: 'Keep this outline' }).click();
      await page.getByRole('heading', { name: 'What is taken from it' }).waitFor();
      await page.getByText('Typed from a pin gauge, pins 0.125 in apart').waitFor();
      expect(page.url()).toContain(`${new URL(address).pathname}/traces/`);
    }));

  it('of a switch point is typed with its distance behind the tip, and is listed at its turnout', () =>
    withPage(javaScript, async (page) => {
      const address = await caseWithTurnout(page, `${prefix}-3`);
      await page.getByRole('link', { name: 'Add an outline, right point' }).click();
      await page.getByLabel(/Typed from a pin gauge/).check();
      await page.getByRole('button', { name: 'Go on' }).click();
      await page.getByRole('heading', { name: 'The pins' }).waitFor();
      const typed = '0\n0\n0\n0\n0\n-1/64\n-1/32\n-1/8\n-1/2\n-3/4';
      await page.getByLabel('From one pin to the next').fill('1/16');
      await page.getByLabel('How far each pin stands out').fill(typed);
      await page.getByLabel('Behind the tip').fill('12');
      await page.getByLabel('Note').fill('First try');
      await page.getByRole('button', { name: 'Keep this outline' }).click();
      await page.getByText('enter the unit too').waitFor();
      expect(await page.getByLabel('Behind the tip').inputValue()).toBe('12');
      expect(await page.getByLabel('Note').inputValue()).toBe('First try');
      expect(await page.getByLabel('How far each pin stands out').inputValue()).toBe(typed);
      await page.getByLabel('Behind the tip').fill('1 ft');
      await page.getByRole('button', { name: 'Keep this outline' }).click();
      await page.getByRole('heading', { name: 'What is taken from it' }).waitFor();
      await page.getByRole('heading', { level: 1, name: /right point 1 ft behind the tip/ }).waitFor();
      await page.getByRole('row', { name: /^Thickness at the top .* ± / }).waitFor();
      expect(await page.getByLabel('Laid over').count()).toBe(0);
      if (javaScript) expect(await accessibilityProblems(page)).toEqual([]);
      await page.goto(`${address}/turnout`);
      await page.getByRole('link', { name: 'Right point 1 ft behind the tip' }).waitFor();
      await page.getByRole('link', { name: /^Along the point/ }).click();
      await page
        .getByText(/gap between point and stock rail 1 ft behind the tip/)
        .first()
        .waitFor();
      await page.goto(`${address}/log`);
      await page.getByText('Unbroken.').waitFor();
    }));
});
