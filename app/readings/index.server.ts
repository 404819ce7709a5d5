import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { currentReadings } from '~/lib/case/current';
import type { Reading, SubjectRef } from '~/lib/case/record';

const keyOf = ({ kind, id }: SubjectRef): string => `${kind}:${id}`;

const bySubject = (loaded: LoadedCase): ReadonlyMap<string, readonly Reading[]> =>
  derived(loaded, 'readings by subject', () => {
    const map = new Map<string, Reading[]>();
    for (const reading of currentReadings(loaded.record)) {
      const key = keyOf(reading.subject);
      const list = map.get(key);
      if (list) list.push(reading);
      else map.set(key, [reading]);
    }
    return map;
  });

/** The readings of one subject that stand, oldest first. */
export const readingsOf = (loaded: LoadedCase, subject: SubjectRef): readonly Reading[] =>
  bySubject(loaded).get(keyOf(subject)) ?? [];
