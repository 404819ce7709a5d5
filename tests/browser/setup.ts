import { spawn, type ChildProcess } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Browser, type Page } from 'playwright-core';
import { browserPath } from './find-browser';

export type RunningApp = {
  readonly address: string;
  readonly dataDir: string;
  readonly stop: () => Promise<void>;
};

const START_MS = 120_000;

function addressIn(app: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    const giveUp = setTimeout(() => reject(new Error(`The app did not start:\n${said}`)), START_MS);
    const listen = (chunk: Buffer) => {
      said += chunk.toString();
      const address = /http:\/\/127\.0\.0\.1:\d+/.exec(said)?.[0];
      if (!address) return;
      clearTimeout(giveUp);
      resolve(address);
    };
    app.stdout?.on('data', listen);
    app.stderr?.on('data', listen);
    app.once('exit', (code) => {
      clearTimeout(giveUp);
      reject(new Error(`The app stopped with ${code}:\n${said}`));
    });
  });
}

/** The built app on a free port of loopback, with an empty data folder of its own. */
export async function startApp({ demo = false }: { readonly demo?: boolean } = {}): Promise<RunningApp> {
  const dataDir = await mkdtemp(join(tmpdir(), 'flangemark-'));
  const removeData = () => rm(dataDir, { recursive: true, force: true });
  try {
    const app = await startAppOn(dataDir, { demo });
    const stop = async () => {
      await app.stop();
      await removeData();
    };
    return { ...app, stop };
  } catch (error) {
    await removeData();
    throw error;
  }
}

/** The built app on a data folder that stays when it stops. */
export async function startAppOn(
  dataDir: string,
  { demo = false }: { readonly demo?: boolean } = {},
): Promise<RunningApp> {
  const app = spawn(process.execPath, ['--import', 'tsx', join('app', 'server', 'main.ts')], {
    env: {
      ...process.env,
      // Vitest marks its own processes; the app is none of them.
      VITEST: '',
      NODE_ENV: 'production',
      FLANGEMARK_DATA: dataDir,
      FLANGEMARK_PORT: '0',
      FLANGEMARK_DEMO: demo ? 'load' : 'skip',
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const stop = async () => {
    if (app.exitCode !== null) return;
    app.kill('SIGTERM');
    await new Promise((resolve) => app.once('exit', resolve));
  };
  try {
    return { address: await addressIn(app), dataDir, stop };
  } catch (error) {
    await stop();
    throw error;
  }
}

export const openBrowser = (): Promise<Browser> =>
  chromium.launch({
    executablePath: browserPath(),
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

type AxeResult = { violations: { id: string; help: string; nodes: { html: string }[] }[]; passes: unknown[] };

/** What WCAG 2.2 AA finds wrong on the open page, in words; empty when nothing. */
export async function accessibilityProblems(page: Page): Promise<readonly string[]> {
  await page.evaluate(AXE);
  const result = await page.evaluate(
    (tags) =>
      (
        window as unknown as { axe: { run: (root: Document, options: object) => Promise<AxeResult> } }
      ).axe.run(document, { runOnly: tags }),
    WCAG,
  );
  if (result.passes.length === 0) throw new Error('The accessibility check checked nothing.');
  return result.violations.map(
    ({ id, help, nodes }) => `${id}: ${help} (${nodes.length}×, such as ${nodes[0]?.html.slice(0, 200)})`,
  );
}
