import { standing } from '../../case/current';
import { absentMany } from '../pieces/absent';
import type { Section } from '../report';
import { faint } from '../type/inline';
import { fieldOf, nameOfPerson } from '../words';

export const statementsSection: Section = {
  id: 'statements',
  title: 'Statements',
  kind: 'numbered',
  build({ record }, writer) {
    const statements = standing(record, 'statement');
    if (statements.length === 0) return absentMany(writer, 'Statements');
    for (const statement of statements) {
      const text = (id: string): string => fieldOf(record, 'statement', statement, id);
      const person = record.entities.person.find(({ id }) => id === statement.fields.person);
      const role = person === undefined ? '' : fieldOf(record, 'person', person, 'role').toLowerCase();
      writer.lead(
        [text('person') || 'Somebody whose name was not recorded', role].filter(Boolean).join(', '),
      );
      const taker = nameOfPerson(record, String(statement.fields.takenBy ?? ''));
      const how = [text('manner'), text('takenAt'), taker === null ? '' : `taken by ${taker}`];
      writer.text([faint(`${how.filter(Boolean).join(' · ')}`)], { size: 8, after: 2 });
      for (const paragraph of String(statement.fields.text ?? '').split(/\n+/)) {
        writer.text(paragraph, { indent: 12, face: 'italic' });
      }
      writer.space(3);
    }
  },
};
