import { closeSync, fsyncSync, mkdirSync, openSync } from 'node:fs';
import { dirname } from 'node:path';

/** Asks the disk to keep the names in a folder: a file's own fsync does not cover its name. */
export function syncFolder(folder: string): void {
  const handle = openSync(folder, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** Makes a folder, and the folders above it, that are there after a power cut too. */
export function makeFolder(folder: string): void {
  const first = mkdirSync(folder, { recursive: true });
  if (first === undefined) return;
  for (let made = folder; ; made = dirname(made)) {
    syncFolder(dirname(made));
    if (made === first || made === dirname(made)) return;
  }
}
