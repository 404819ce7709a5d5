import type { ImportedCounts } from '~/app/imports/imported';
import { Message } from '../Message';

const WHAT = {
  consist: { one: 'vehicle', many: 'vehicles', of: 'readings' },
  stations: { one: 'station', many: 'stations', of: 'readings' },
  line: { one: 'row of the line', many: 'rows of the line', of: 'readings' },
  recorder: { one: 'recorder run', many: 'recorder runs', of: 'samples' },
} as const;

/** What the import that led here recorded. */
export function Imported({ counts: { kind, records, readings } }: { readonly counts: ImportedCounts }) {
  const { one, many, of } = WHAT[kind];
  return (
    <Message tone="good">
      Imported {records} {records === 1 ? one : many} with {readings} {of}.
    </Message>
  );
}
