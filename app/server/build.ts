import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

const SOURCES = ['app', 'lib', 'db', 'package-lock.json', 'vite.config.ts', 'tsconfig.json'];
const BUILT = join('build', 'server', 'index.js');

function newest(path: string): number {
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return readdirSync(path).reduce((latest, name) => Math.max(latest, newest(join(path, name))), stat.mtimeMs);
}

/** True when nothing is built yet, or a source changed after it was. */
export function buildIsStale(root: string): boolean {
  const built = join(root, BUILT);
  if (!existsSync(built)) return true;
  const builtAt = statSync(built).mtimeMs;
  return SOURCES.some((source) => existsSync(join(root, source)) && newest(join(root, source)) > builtAt);
}

/** Builds the pages and the server part with Vite; throws when that fails. */
export function build(root: string): void {
  const cli = join(root, 'node_modules', '@remix-run', 'dev', 'dist', 'cli.js');
  const run = spawnSync(process.execPath, [cli, 'vite:build'], {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, NODE_ENV: 'production' },
  });
  if (run.status !== 0) throw new Error('The app could not be built; see the lines above.');
}
