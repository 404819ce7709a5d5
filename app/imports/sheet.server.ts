import { readFileSync } from 'node:fs';
import { files } from '~/app/files.server';
import { decodeText, readCsv, type CsvSheet } from '~/lib/case/imports/csv';
import { refuse, type Result } from '~/lib/readings/result';

const KEPT = 2;
const cache = new Map<string, CsvSheet>();

/** The table of a stored file. The steps of an import read it again and again, so the last ones are kept. */
export function storedSheet(sha256: string): Result<CsvSheet> {
  const known = cache.get(sha256);
  if (known) return { ok: true, value: known };
  if (!files().has(sha256)) return refuse('The file is no longer in the data folder. Choose it again.');
  const text = decodeText(readFileSync(files().pathOf(sha256)));
  const sheet = text.ok ? readCsv(text.value) : text;
  if (!sheet.ok) return sheet;
  cache.set(sha256, sheet.value);
  for (const oldest of cache.keys()) {
    if (cache.size <= KEPT) break;
    cache.delete(oldest);
  }
  return sheet;
}
