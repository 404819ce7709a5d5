import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const dev = process.argv.includes('--dev');

async function main(): Promise<void> {
  // React and Express read it when they are first loaded, so nothing of theirs is imported above.
  process.env.NODE_ENV = dev ? 'development' : 'production';
  const { readSettings } = await import('./settings');
  const settings = readSettings(process.env);
  if (!dev) {
    const { build, buildIsStale } = await import('./build');
    if (buildIsStale(root)) build(root);
  }
  const { prepareData } = await import('./prepare');
  await prepareData(settings.loadDemo);
  const { serve } = await import('./serve');
  await serve(root, settings, dev);
}

main().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exit(1);
});
