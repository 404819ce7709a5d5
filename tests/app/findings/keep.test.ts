import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { z } from 'zod';
import type { LongSum } from '~/lib/findings/long-sum';

const schema = z.object({ value: z.number() });
type Value = z.infer<typeof schema>;

let folder: string;
const sums = (): string => join(folder, 'derived', 'sums');

/** As another process would have it: nothing in memory, only what lies on disk. */
async function freshKeep() {
  vi.resetModules();
  return (await import('~/app/findings/keep.server')).keepOnDisk;
}

const sum = (key: string, value: number) => {
  const compute = vi.fn((): Value => ({ value }));
  const asked: LongSum<Value> = { key, schema, compute };
  return { asked, compute };
};

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'flangemark-'));
  vi.stubEnv('FLANGEMARK_DATA', folder);
});
afterEach(() => {
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true, force: true });
});

describe('long sums kept on disk', () => {
  it('are computed once, and read by the next process', async () => {
    const first = sum('a', 1.1);
    const keep = await freshKeep();
    expect(keep(first.asked)).toEqual({ value: 1.1 });
    expect(keep(first.asked)).toEqual({ value: 1.1 });
    expect(first.compute).toHaveBeenCalledTimes(1);
    expect(readdirSync(sums()).filter((name) => /^[0-9a-f]{64}\.json$/.test(name))).toHaveLength(1);
    expect(readdirSync(sums())).toHaveLength(1);
    const later = sum('a', 2);
    expect((await freshKeep())(later.asked)).toEqual({ value: 1.1 });
    expect(later.compute).not.toHaveBeenCalled();
  });

  it('keep apart what has another key', async () => {
    const keep = await freshKeep();
    expect(keep(sum('a', 1).asked)).toEqual({ value: 1 });
    expect(keep(sum('b', 2).asked)).toEqual({ value: 2 });
    expect(readdirSync(sums())).toHaveLength(2);
  });

  it.each([
    ['is cut off', '{"value":'],
    ['is something else', '{"other":1}'],
    ['has a number that is none', '{"value":"1"}'],
  ])('are computed again where what is kept %s, and mended', async (_, text) => {
    (await freshKeep())(sum('a', 1).asked);
    const [name = ''] = readdirSync(sums());
    const path = join(sums(), name);
    writeFileSync(path, text);
    const again = sum('a', 3);
    expect((await freshKeep())(again.asked)).toEqual({ value: 3 });
    expect(again.compute).toHaveBeenCalledTimes(1);
    expect(JSON.parse(readFileSync(path, 'utf8'))).toEqual({ value: 3 });
  });

  it('leave nothing behind where the sum fails', async () => {
    const keep = await freshKeep();
    const failing: LongSum<Value> = {
      key: 'a',
      schema,
      compute: () => {
        throw new Error('no');
      },
    };
    expect(() => keep(failing)).toThrow('no');
    expect(keep(sum('a', 4).asked)).toEqual({ value: 4 });
  });
});
