import { choiceLabel } from '../choice-label';
import type { Kind } from '../kind';
import { DISTURBANCE_CHOICES } from './ground';

const MEASURED_WHERE = [
  { id: 'asFound', label: 'As found, before re-railing' },
  { id: 'afterRerailing', label: 'After re-railing' },
  { id: 'shop', label: 'In the shop, axle identified' },
] as const;

export const wheelsetKind: Kind = {
  id: 'wheelset',
  name: 'Wheelset',
  plural: 'Wheelsets',
  fields: [
    { id: 'vehicle', label: 'Vehicle', type: 'ref', to: 'vehicle', required: true },
    {
      id: 'axle',
      label: 'Axle, counted from the leading end',
      type: 'integer',
      min: 1,
      max: 16,
      required: true,
    },
    {
      id: 'firstDerailed',
      label: 'Thought to be the first to derail',
      type: 'flag',
    },
    {
      id: 'wheelDesign',
      label: 'Wheel design and marks',
      type: 'text',
      maxLength: 80,
      help: 'Flange kind, tread taper, rims, dates.',
    },
    { id: 'measuredWhere', label: 'When it was read', type: 'choice', choices: MEASURED_WHERE },
    {
      id: 'disturbance',
      label: 'State when read',
      type: 'choice',
      choices: DISTURBANCE_CHOICES,
      required: true,
    },
    { id: 'note', label: 'Note', type: 'text', long: true, maxLength: 1000 },
  ],
  describe: (f) => `Axle ${f.axle ?? '?'}`,
};

export const wheelDefectKind: Kind = {
  id: 'wheelDefect',
  name: 'Wheel defect',
  plural: 'Wheel defects',
  fields: [
    { id: 'wheelset', label: 'Wheelset', type: 'ref', to: 'wheelset', required: true },
    {
      id: 'side',
      label: 'Wheel',
      type: 'choice',
      required: true,
      choices: [
        { id: 'left', label: 'Left' },
        { id: 'right', label: 'Right' },
      ],
    },
    {
      id: 'type',
      label: 'Defect',
      type: 'choice',
      required: true,
      choices: [
        { id: 'slidFlat', label: 'Slid flat' },
        { id: 'shelled', label: 'Shelled spot' },
        { id: 'spalled', label: 'Spalled spot' },
        { id: 'builtUpTread', label: 'Built-up tread' },
        { id: 'chippedFlange', label: 'Chipped flange' },
        { id: 'chippedRim', label: 'Chipped rim' },
        { id: 'cracked', label: 'Crack' },
        { id: 'overheated', label: 'Overheated' },
        { id: 'loose', label: 'Loose on the axle' },
        { id: 'other', label: 'Other' },
      ],
    },
    {
      id: 'appearance',
      label: 'Fresh or old',
      type: 'choice',
      choices: [
        { id: 'fresh', label: 'Fresh metal (may be damage from the derailment)' },
        { id: 'old', label: 'Worn or rusted (was there before)' },
        { id: 'notSaid', label: 'Could not tell' },
      ],
    },
    { id: 'note', label: 'Note', type: 'text', maxLength: 400 },
  ],
  describe: (f) =>
    `${choiceLabel(wheelDefectKind.fields, 'type', f.type) || 'Defect'}, ${f.side ?? ''} wheel`,
};

export const truckKind: Kind = {
  id: 'truck',
  name: 'Truck',
  plural: 'Trucks',
  fields: [
    { id: 'vehicle', label: 'Vehicle', type: 'ref', to: 'vehicle', required: true },
    {
      id: 'end',
      label: 'Truck',
      type: 'choice',
      required: true,
      choices: [
        { id: 'leading', label: 'Leading' },
        { id: 'trailing', label: 'Trailing' },
      ],
    },
    {
      id: 'design',
      label: 'Design',
      type: 'choice',
      choices: [
        { id: 'threePiece', label: 'Three-piece' },
        { id: 'rigidFrame', label: 'Rigid frame' },
        { id: 'steering', label: 'Steering' },
        { id: 'other', label: 'Other' },
      ],
    },
    {
      id: 'sideBearings',
      label: 'Side bearings',
      type: 'choice',
      choices: [
        { id: 'clearance', label: 'With clearance (roller or block)' },
        { id: 'constantContact', label: 'Constant contact' },
      ],
    },
    { id: 'measuredWhere', label: 'When it was read', type: 'choice', choices: MEASURED_WHERE },
    {
      id: 'disturbance',
      label: 'State when read',
      type: 'choice',
      choices: DISTURBANCE_CHOICES,
      required: true,
    },
    { id: 'note', label: 'Note', type: 'text', long: true, maxLength: 1000 },
  ],
  describe: (f) => `${f.end === 'trailing' ? 'Trailing' : 'Leading'} truck`,
};
