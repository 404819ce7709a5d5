import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { newId } from '~/db/id';
import { dataDir } from '~/db/open';
import { sha256Hex } from '~/lib/custody/canonical';
import { keepInMemory, type Keep, type LongSum } from '~/lib/findings/long-sum';

const folder = (): string => resolve(dataDir(), 'derived', 'sums');

/** A sum that was kept before; null when it was not, or cannot be believed. */
function kept<T>(path: string, { schema }: LongSum<T>): T | null {
  try {
    const read = schema.safeParse(JSON.parse(readFileSync(path, 'utf8')));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}

/**
 * Keeps long sums about outlines beside the pictures made from photos: the page, the argument and the
 * report then take the same numbers, and none waits for what another has computed. They can always
 * be made again.
 */
export const keepOnDisk: Keep = <T>(sum: LongSum<T>): T =>
  keepInMemory({
    ...sum,
    compute: () => {
      const path = join(folder(), `${sha256Hex(sum.key)}.json`);
      const before = kept(path, sum);
      if (before !== null) return before;
      const value = sum.compute();
      mkdirSync(folder(), { recursive: true });
      const temporary = `${path}.${newId()}`;
      writeFileSync(temporary, JSON.stringify(value));
      renameSync(temporary, path);
      return value;
    },
  });
