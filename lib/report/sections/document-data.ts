import { CASE_RECORD_VERSION } from '../../case/record';
import { currentReadings } from '../../case/current';
import { documentId } from './title';
import type { Section } from '../report';
import { mono } from '../type/inline';
import { utc } from '../words';

export const documentSection: Section = {
  id: 'document',
  title: 'Document data and how to verify it',
  kind: 'plain',
  build(report, writer) {
    const { record, input } = report;
    writer.pairs([
      ['Document', documentId(report)],
      ['Case number', String(record.fields.number ?? '')],
      ['Case id', [mono(record.id)]],
      ['Log head (SHA-256)', [mono(input.logHead)]],
      ['Printed', utc(input.generatedAt)],
      ['Program', `Flangemark ${input.version}, case record version ${CASE_RECORD_VERSION}`],
      [
        'Contents',
        `${record.readings.length} readings, ${currentReadings(record).length} of them standing; ${record.photos.filter(({ removed }) => removed === null).length} photos; ${record.recorderRuns.filter(({ removed }) => removed === null).length} recorder files`,
      ],
    ]);
    writer.heading('How to verify');
    writer.list([
      'The log head is the hash of the last entry of the case’s change log when this was printed. Every entry holds the hash of the one before it, so the head stands for all of them: whoever has this page can tell whether anything before it was changed.',
      'Open the case on the machine that keeps it, choose Log, and press “Check again now”: the whole chain is computed anew from the stored rows. The entry with the hash above must be in it, and the chain unbroken.',
      'Photos and files are named by their SHA-256. Compute it of the original with any standard program and compare it with the one printed under the picture.',
      'Printing the same state of the case again, with the same version of the program and the same moment of printing, gives the same bytes. The hash of the PDF itself is therefore kept outside it, with whoever received it.',
    ]);
  },
};
