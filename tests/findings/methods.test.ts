import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { METHODS } from '~/lib/findings/methods';

const filesUnder = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    return entry.isDirectory() ? filesUnder(path) : path.endsWith('.ts') ? [path] : [];
  });

describe('the list of methods', () => {
  it('holds every method that a file of lib exports', () => {
    const exported = filesUnder('lib').flatMap(
      (path) => readFileSync(path, 'utf8').match(/^export const \w+: Method\b/gm) ?? [],
    );
    expect(exported.length).toBeGreaterThan(10);
    expect(METHODS).toHaveLength(exported.length);
  });

  it('names each method once, with formula, range and sources', () => {
    expect(new Set(METHODS.map(({ id }) => id)).size).toBe(METHODS.length);
    for (const { name, formula, validRange, sources } of METHODS) {
      expect([name, formula, validRange].every((text) => text.trim() !== '')).toBe(true);
      expect(sources.length).toBeGreaterThan(0);
    }
  });
});
