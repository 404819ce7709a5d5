// Runs before any package is there, so it uses nothing but what Node brings.
import { spawnSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const lock = join(root, 'package-lock.json');
// npm writes this file at the end of every install, so its age is the age of node_modules.
const installed = join(root, 'node_modules', '.package-lock.json');

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`Flangemark needs Node.js 20.19 or newer; this is ${process.versions.node}.`);
  process.exit(1);
}

const stale = !existsSync(installed) || statSync(installed).mtimeMs < statSync(lock).mtimeMs;
if (stale) {
  console.log('Installing packages (npm ci) …');
  const npm = process.env.npm_execpath;
  const run = npm
    ? spawnSync(process.execPath, [npm, 'ci', '--no-fund', '--no-audit'], { cwd: root, stdio: 'inherit' })
    : spawnSync('npm', ['ci', '--no-fund', '--no-audit'], { cwd: root, stdio: 'inherit', shell: true });
  if (run.status !== 0) {
    console.error('The packages could not be installed; see the lines above.');
    process.exit(run.status ?? 1);
  }
}
