import type { Kind } from '../kind';

export const lineStretchKind: Kind = {
  id: 'lineStretch',
  name: 'Row of the line’s profile',
  plural: 'Grades and curves of the line',
  fields: [
    {
      id: 'name',
      label: 'Name on the chart',
      type: 'text',
      maxLength: 40,
      help: 'Milepost, curve number, foot of the grade.',
    },
    {
      id: 'hand',
      label: 'Curve to the',
      type: 'choice',
      choices: [
        { id: 'left', label: 'Left', alsoSaid: ['l', 'lh', 'left hand'] },
        { id: 'right', label: 'Right', alsoSaid: ['r', 'rh', 'right hand'] },
      ],
      help: 'Facing the way the distances run. Not said: as the curve at the POD, and a curvature below zero the other way.',
    },
    { id: 'note', label: 'Note', type: 'text', maxLength: 200 },
  ],
  describe: (f) => String(f.name || 'Row of the line’s profile'),
};
