import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { chromium } from 'playwright-core';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];

const ELSEWHERE = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
];

/** A Chromium or Chrome on this machine: the system's own first. */
export function findBrowser(): string | null {
  const folders = (process.env.PATH ?? '').split(delimiter).filter(Boolean);
  const onPath = folders.flatMap((folder) => NAMES.map((name) => join(folder, name)));
  return [...onPath, ...ELSEWHERE, chromium.executablePath()].find((path) => existsSync(path)) ?? null;
}

const run = (command: string, args: readonly string[]): boolean =>
  spawnSync(command, args, { stdio: 'inherit' }).status === 0;

function installWithApt(): boolean {
  const isRoot = process.getuid?.() === 0;
  if (!isRoot || !existsSync('/usr/bin/apt-get')) return false;
  return (
    run('apt-get', ['update', '-q']) &&
    run('apt-get', ['install', '-y', '-q', '--no-install-recommends', 'chromium'])
  );
}

const installWithPlaywright = (): boolean =>
  run(process.execPath, [join('node_modules', 'playwright-core', 'cli.js'), 'install', 'chromium']);

/** The browser the tests drive, installed when there is none. */
export function browserPath(): string {
  const found = findBrowser();
  if (found) return found;
  console.log('No Chromium or Chrome was found; installing one …');
  if (!installWithApt() && !installWithPlaywright()) {
    throw new Error('No browser could be installed. Install Chromium or Chrome and run the tests again.');
  }
  const installed = findBrowser();
  if (!installed) throw new Error('A browser was installed but is not found. Put it on the PATH.');
  return installed;
}
