import { pdfPhotos } from './pdf-photos';
import { recorderImport } from './recorder-import';
import { screens } from './screens';
import type { Measurement } from './measurement';

/**
 * Ratios against a bare baseline of the same run. `npm run bench -- --json` prints one array of
 * `{name, value, floor, holds}`; without it, a table to read.
 */
async function main(): Promise<void> {
  const asJson = process.argv.includes('--json');
  const only = process.argv.find((word) => word.startsWith('--only='))?.slice('--only='.length);
  const parts: Readonly<Record<string, () => readonly Measurement[] | Promise<readonly Measurement[]>>> = {
    'recorder-import': recorderImport,
    screens,
    'pdf-photos': pdfPhotos,
  };
  const measured: Measurement[] = [];
  for (const [name, measure] of Object.entries(parts)) {
    if (only !== undefined && only !== name) continue;
    measured.push(...(await measure()));
  }
  const results = measured.map((one) => ({ ...one, holds: one.value <= one.floor }));
  if (asJson) {
    console.log(
      JSON.stringify(results.map(({ name, value, floor, holds }) => ({ name, value, floor, holds }))),
    );
    return;
  }
  for (const { name, value, floor, unit, holds, parts: pieces } of results) {
    console.log(
      `${holds ? 'holds ' : 'BROKEN'}  ${name.padEnd(18)} ${value.toFixed(2)} (at most ${floor}) ${unit}`,
    );
    if (pieces) console.log(`        ${pieces.join(', ')}`);
  }
}

await main();
