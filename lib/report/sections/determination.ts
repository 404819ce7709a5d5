import { chosenExplanation, determinationCheck } from '../../explanations/determination';
import { sentenceRuns } from '../pieces/sentence';
import type { Section } from '../report';
import { faint } from '../type/inline';

const TITLES = {
  carried: 'Determination and evidence agree',
  notCarried: 'Determination and evidence differ',
  against: 'Determination and evidence differ',
  notWeighed: 'Not weighed by number',
  notSaid: 'Not held against the evidence',
} as const;

export const determinationSection: Section = {
  id: 'determination',
  title: 'Determination',
  kind: 'numbered',
  build({ record, argument, refs }, writer) {
    writer.text([faint('In the investigator’s own words. The tool states no cause and names no fault.')]);
    const words = record.narrative.determination.trim();
    if (words === '') writer.text('A determination was not recorded.');
    else for (const paragraph of words.split(/\n+/)) writer.text(paragraph, { size: 10 });
    const check = determinationCheck(argument, chosenExplanation(record));
    writer.space(4);
    writer.note(
      TITLES[check.kind],
      sentenceRuns(check.sentence, refs),
      check.kind === 'against' || check.kind === 'notCarried' ? 'warn' : 'plain',
    );
  },
};
