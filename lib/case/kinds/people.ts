import { INSTRUMENT_KINDS } from '../../readings/instrument';
import type { Kind } from '../kind';

export const personKind: Kind = {
  id: 'person',
  name: 'Person',
  plural: 'People',
  fields: [
    { id: 'name', label: 'Name', type: 'text', required: true, maxLength: 80 },
    {
      id: 'role',
      label: 'Role',
      type: 'choice',
      required: true,
      choices: [
        { id: 'investigator', label: 'Investigator' },
        { id: 'track', label: 'Track' },
        { id: 'mechanical', label: 'Mechanical' },
        { id: 'operating', label: 'Operating' },
        { id: 'signal', label: 'Signals' },
        { id: 'reviewer', label: 'Reviewer' },
        { id: 'crew', label: 'Train crew' },
        { id: 'witness', label: 'Witness' },
        { id: 'other', label: 'Other' },
      ],
    },
    { id: 'organisation', label: 'Organisation', type: 'text', maxLength: 120 },
    { id: 'contact', label: 'How to reach them', type: 'text', maxLength: 120 },
  ],
  describe: (f) => String(f.name ?? ''),
};

export const instrumentKind: Kind = {
  id: 'instrument',
  name: 'Instrument',
  plural: 'Instruments',
  fields: [
    { id: 'name', label: 'Name and serial number', type: 'text', required: true, maxLength: 80 },
    {
      id: 'kind',
      label: 'Kind',
      type: 'choice',
      required: true,
      choices: INSTRUMENT_KINDS.map(({ id, name }) => ({ id, label: name })),
    },
    {
      id: 'resolution',
      label: 'Smallest division read',
      type: 'text',
      maxLength: 20,
      help: 'As marked on it, such as 1/16 in or 0.1 mm.',
    },
    {
      id: 'standardUncertainty',
      label: 'Standard uncertainty, if its certificate states one',
      type: 'text',
      maxLength: 20,
      help: 'One standard uncertainty (k = 1) with its unit, such as 0.5 mm. Leave empty to use the division.',
    },
    { id: 'calibratedOn', label: 'Last calibrated', type: 'date' },
    { id: 'note', label: 'Note', type: 'text', maxLength: 200 },
  ],
  describe: (f) => String(f.name ?? ''),
};

export const statementKind: Kind = {
  id: 'statement',
  name: 'Statement',
  plural: 'Statements',
  fields: [
    { id: 'person', label: 'Who said it', type: 'ref', to: 'person', required: true },
    { id: 'takenBy', label: 'Taken by', type: 'ref', to: 'person' },
    { id: 'takenAt', label: 'When', type: 'dateTime' },
    {
      id: 'manner',
      label: 'How it was given',
      type: 'choice',
      choices: [
        { id: 'written', label: 'Written and signed' },
        { id: 'recorded', label: 'Recorded' },
        { id: 'spoken', label: 'Spoken, noted by the taker' },
      ],
    },
    { id: 'text', label: 'Statement', type: 'text', long: true, required: true, maxLength: 8000 },
  ],
  describe: (f) => String(f.text ?? '').slice(0, 80),
};
