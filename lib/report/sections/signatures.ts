import type { Section } from '../report';
import { INK } from '../type/inks';
import { breakLines, faint } from '../type/inline';

const HEIGHT = 62;

export const signaturesSection: Section = {
  id: 'signatures',
  title: 'Signatures',
  kind: 'plain',
  startsPage: true,
  build({ record }, writer) {
    const signatories = record.narrative.signatories
      .split('\n')
      .map((line) => line.trim())
      .filter(Boolean);
    writer.text(
      'By signing, each says that the readings under their name are as they took them, and that the words in this report are as they gave them.',
      { after: 12 },
    );
    const lines = signatories.length === 0 ? [''] : signatories;
    if (signatories.length === 0) writer.text([faint('Signatories were not recorded.')]);
    for (const name of lines) {
      writer.block(HEIGHT, 'P', null, ({ x, y, width }) => {
        const half = width * 0.6;
        writer.rule(x, x + half, y + 34, INK.text);
        writer.rule(x + half + 24, x + width, y + 34, INK.text);
        const label = (text: string, at: number): void =>
          writer.lines(breakLines([faint(text)], half, { size: 8 }, writer.measure), at, y + 37, {
            size: 8,
            lead: 11,
          });
        label(name || 'Name', x);
        label('Place and date', x + half + 24);
      });
    }
  },
};
