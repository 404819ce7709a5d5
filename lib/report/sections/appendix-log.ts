import type { Section } from '../report';
import { mono } from '../type/inline';
import { counted, utc } from '../words';

export const appendixLog: Section = {
  id: 'log',
  title: 'Change log',
  kind: 'appendix',
  startsPage: true,
  build({ input }, writer) {
    const log = input.log ?? [];
    if (log.length === 0) {
      writer.text(
        'The change log is kept with the case and can be seen on its Log screen; it was not given to this report.',
      );
      return;
    }
    const people = new Map<string, number>();
    for (const { who } of log) people.set(who, (people.get(who) ?? 0) + 1);
    const [first] = log;
    const last = log.at(-1);
    writer.text(
      `${counted(log.length, 'entry', 'entries')}, from ${utc(first?.at ?? '')} to ${utc(last?.at ?? '')}: ${[
        ...people,
      ]
        .map(([who, count]) => `${who} ${count}`)
        .join(
          ', ',
        )}. Each entry carries the hash of the one before it and cannot be changed or taken away; what each changed in full stands in the case.`,
    );
    writer.table('Entries of the log, oldest first', {
      columns: [
        { head: 'No.', align: 'right' },
        { head: 'When' },
        { head: 'Entered as' },
        { head: 'What' },
        { head: 'Hash begins' },
      ],
      rows: log.map(({ seq, at, who, what, hash }) => ({
        cells: [String(seq), utc(at), who, what, [mono(hash.slice(0, 12))]],
      })),
    });
  },
};
