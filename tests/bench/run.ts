import { contact } from './contact';
import { pdfPhotos } from './pdf-photos';
import { recorderImport } from './recorder-import';
import { screens } from './screens';
import { trackAnalysis } from './track-analysis';
import { trainSimulation } from './train-simulation';
import { traceAccuracy } from './trace-accuracy';
import { holds, type Measurement } from './measurement';

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
    'train-simulation': trainSimulation,
    'trace-accuracy': traceAccuracy,
    contact,
    'track-analysis': trackAnalysis,
  };
  const measured: Measurement[] = [];
  for (const [name, measure] of Object.entries(parts)) {
    if (only !== undefined && only !== name) continue;
    measured.push(...(await measure()));
  }
  const results = measured.map((one) => ({ ...one, holds: holds(one) }));
  if (asJson) {
    console.log(
      JSON.stringify(results.map(({ name, value, floor, holds }) => ({ name, value, floor, holds }))),
    );
    return;
  }
  for (const { name, value, floor, atLeast, unit, holds: held, parts: pieces } of results) {
    console.log(
      `${held ? 'holds ' : 'BROKEN'}  ${name.padEnd(18)} ${value.toFixed(2)} (${atLeast ? 'at least' : 'at most'} ${floor}) ${unit}`,
    );
    if (pieces && pieces.length > 0) console.log(`        ${pieces.join(', ')}`);
  }
}

await main();
