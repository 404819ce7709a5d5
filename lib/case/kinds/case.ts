import { DESIGNATED_CLASSES, TRACK_SETS } from '../../rules';
import type { Kind } from '../kind';

const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export const TIME_ZONE_HELP = 'The zone the site keeps, such as America/Chicago or Europe/Berlin.';

export const caseKind: Kind = {
  id: 'case',
  name: 'Case',
  plural: 'Cases',
  fields: [
    { id: 'number', label: 'Case number', type: 'text', required: true, maxLength: 40 },
    { id: 'title', label: 'Title', type: 'text', required: true, maxLength: 160 },
    { id: 'occurredAt', label: 'When it happened (local time)', type: 'dateTime' },
    { id: 'timeZone', label: 'Time zone', type: 'text', maxLength: 60, help: TIME_ZONE_HELP },
    { id: 'railroad', label: 'Railroad', type: 'text', maxLength: 120 },
    { id: 'subdivision', label: 'Subdivision or line', type: 'text', maxLength: 120 },
    {
      id: 'milepost',
      label: 'Milepost',
      type: 'text',
      maxLength: 40,
      help: 'As the timetable writes it, such as 41.7.',
    },
    { id: 'track', label: 'Track', type: 'text', maxLength: 60, help: 'Main, siding, yard track number.' },
    { id: 'direction', label: 'Direction of travel', type: 'text', maxLength: 60 },
    {
      id: 'trackClass',
      label: 'Class of track',
      type: 'choice',
      choices: DESIGNATED_CLASSES.map(({ id, label }) => ({ id, label: capitalised(label) })),
      help: 'As designated by the track owner before the derailment.',
    },
    {
      id: 'alignment',
      label: 'Where the POD lies',
      type: 'choice',
      choices: [
        { id: 'tangent', label: 'Tangent' },
        { id: 'curveLeft', label: 'Curve to the left (right rail high)' },
        { id: 'curveRight', label: 'Curve to the right (left rail high)' },
      ],
      help: 'As seen facing the direction of travel.',
    },
    {
      id: 'trackMaterial',
      label: 'Rail and ties',
      type: 'text',
      maxLength: 160,
      help: 'Rail section and year, jointed or welded, ties, plates, fastenings.',
    },
    { id: 'weather', label: 'Weather', type: 'text', maxLength: 200 },
    { id: 'narrative', label: 'What happened, as first reported', type: 'text', long: true, maxLength: 4000 },
    {
      id: 'units',
      label: 'Units',
      type: 'choice',
      required: true,
      choices: [
        { id: 'us', label: 'Inches and fractions, mph, °F' },
        { id: 'metric', label: 'Millimetres, km/h, °C' },
      ],
    },
    {
      id: 'ruleSet',
      label: 'Limits the readings are held against',
      type: 'choice',
      required: true,
      choices: [
        ...TRACK_SETS.map(({ id, name, choice }) => ({ id, label: choice ?? name })),
        { id: 'railroad', label: 'The railroad’s own limits, as entered under Track' },
      ],
    },
  ],
  describe: (f) => [f.number, f.title].filter(Boolean).join(' · '),
};
