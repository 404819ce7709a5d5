import { choiceLabel } from '../choice-label';
import type { Kind } from '../kind';

const RAIL_CHOICES = [
  { id: 'left', label: 'Left' },
  { id: 'right', label: 'Right' },
] as const;

/** State of the place when it was read: disturbed readings never feed a finding unnoticed. */
export const DISTURBANCE_CHOICES = [
  { id: 'undisturbed', label: 'Undisturbed' },
  { id: 'disturbed', label: 'Disturbed by the derailment' },
  { id: 'repaired', label: 'Repaired since' },
  { id: 'notSaid', label: 'Not said' },
] as const;

export const markKind: Kind = {
  id: 'mark',
  name: 'Mark',
  plural: 'Marks',
  fields: [
    {
      id: 'type',
      label: 'Kind of mark',
      type: 'choice',
      required: true,
      choices: [
        { id: 'flangeOnHead', label: 'Flange mark on the rail head' },
        { id: 'treadRimInside', label: 'Tread-rim mark along the inside of the head' },
        { id: 'dropFieldSide', label: 'Drop to the field side' },
        { id: 'dropGaugeSide', label: 'Drop between the rails' },
        { id: 'flangeOnTie', label: 'Flange mark on ties or fastenings' },
        { id: 'treadOnTie', label: 'Tread mark on ties or fastenings' },
        { id: 'runningOnWeb', label: 'Running mark on web or base' },
        { id: 'pointStrike', label: 'Strike at a switch-point tip' },
        { id: 'flangeOnPoint', label: 'Flange mark on top of a switch point' },
        { id: 'railEndBatter', label: 'Batter on a rail end' },
        { id: 'other', label: 'Other' },
      ],
    },
    {
      id: 'rail',
      label: 'Rail',
      type: 'choice',
      choices: RAIL_CHOICES,
      required: true,
      help: 'Facing the direction of travel.',
    },
    {
      id: 'appearance',
      label: 'Fresh or old',
      type: 'choice',
      choices: [
        { id: 'fresh', label: 'Fresh bright metal' },
        { id: 'old', label: 'Rust, grease or dirt in it' },
        { id: 'notSaid', label: 'Could not tell' },
      ],
    },
    { id: 'isPod', label: 'This is the first mark (POD)', type: 'flag' },
    { id: 'madeBy', label: 'Wheel thought to have made it', type: 'text', maxLength: 80 },
    {
      id: 'walkedBackFt',
      label: 'How far back of it the rails were searched',
      type: 'text',
      maxLength: 40,
      help: 'Both rails, such as 200 ft.',
    },
    { id: 'disturbance', label: 'State when read', type: 'choice', choices: DISTURBANCE_CHOICES },
    { id: 'description', label: 'Description', type: 'text', long: true, maxLength: 1000 },
  ],
  describe: (f) => String(f.description || choiceLabel(markKind.fields, 'type', f.type) || 'Mark'),
};

export const stationKind: Kind = {
  id: 'station',
  name: 'Station',
  plural: 'Stations',
  fields: [
    {
      id: 'name',
      label: 'Station',
      type: 'text',
      required: true,
      maxLength: 20,
      help: '0 at the POD, negative before it.',
    },
    {
      id: 'disturbance',
      label: 'State when read',
      type: 'choice',
      choices: DISTURBANCE_CHOICES,
      required: true,
    },
    {
      id: 'joint',
      label: 'Joint',
      type: 'choice',
      choices: [...RAIL_CHOICES, { id: 'both', label: 'Both' }],
    },
    { id: 'note', label: 'Note', type: 'text', maxLength: 200 },
  ],
  describe: (f) => `Station ${f.name ?? ''}`,
};

export const railKind: Kind = {
  id: 'rail',
  name: 'Rail',
  plural: 'Rails',
  fields: [
    {
      id: 'rail',
      label: 'Rail',
      type: 'choice',
      choices: RAIL_CHOICES,
      required: true,
      help: 'Facing the direction of travel.',
    },
    {
      id: 'where',
      label: 'Where',
      type: 'text',
      required: true,
      maxLength: 60,
      help: 'Station, or distance from the POD with its unit, such as -15 ft: before it is negative.',
    },
    {
      id: 'section',
      label: 'Section',
      type: 'choice',
      required: true,
      choices: ['115RE', '119RE', '132RE', '133RE', '136RE', '141RE', '60E1', '54E1', 'other'].map((id) => ({
        id,
        label: id === 'other' ? 'Other (say which in the note)' : id,
      })),
    },
    {
      id: 'stockRailOf',
      label: 'Stock rail of',
      type: 'ref',
      to: 'turnout',
      help: 'The turnout whose point closes against this rail: flange and point are fitted on its outline.',
    },
    { id: 'rolled', label: 'Rolled (maker mark, year)', type: 'text', maxLength: 60 },
    {
      id: 'joint',
      label: 'Joint or weld within 20 ft',
      type: 'text',
      maxLength: 80,
    },
    {
      id: 'disturbance',
      label: 'State when read',
      type: 'choice',
      choices: DISTURBANCE_CHOICES,
      required: true,
    },
    { id: 'note', label: 'Note', type: 'text', long: true, maxLength: 1000 },
  ],
  describe: (f) => `${f.rail === 'left' ? 'Left' : 'Right'} rail, ${f.where ?? ''}`,
};

export const turnoutKind: Kind = {
  id: 'turnout',
  name: 'Turnout',
  plural: 'Turnouts',
  fields: [
    { id: 'name', label: 'Name or number', type: 'text', required: true, maxLength: 60 },
    { id: 'frogNumber', label: 'Frog number', type: 'text', maxLength: 10 },
    {
      id: 'hand',
      label: 'Hand',
      type: 'choice',
      choices: [
        { id: 'left', label: 'Left hand' },
        { id: 'right', label: 'Right hand' },
        { id: 'equilateral', label: 'Equilateral' },
      ],
    },
    {
      id: 'movement',
      label: 'Movement over the points',
      type: 'choice',
      required: true,
      choices: [
        { id: 'facing', label: 'Facing' },
        { id: 'trailing', label: 'Trailing' },
      ],
    },
    {
      id: 'lined',
      label: 'Lined for',
      type: 'choice',
      choices: [
        { id: 'normal', label: 'Normal' },
        { id: 'reverse', label: 'Reverse' },
        { id: 'unknown', label: 'Not known' },
      ],
    },
    {
      id: 'pointRead',
      label: 'Point read',
      type: 'choice',
      choices: [
        { id: 'left', label: 'Left point' },
        { id: 'right', label: 'Right point' },
      ],
    },
    { id: 'pointProtection', label: 'Point protection fitted', type: 'text', maxLength: 80 },
    { id: 'lockAndThrow', label: 'Throw, lock and rods as found', type: 'text', long: true, maxLength: 600 },
    {
      id: 'disturbance',
      label: 'State when read',
      type: 'choice',
      choices: DISTURBANCE_CHOICES,
      required: true,
    },
    { id: 'note', label: 'Note', type: 'text', long: true, maxLength: 1000 },
  ],
  describe: (f) => String(f.name ?? 'Turnout'),
};
