import type { QuantityGroup } from '../quantity';
import { crossLength, LEFT_RIGHT } from './build';

export const sideBearingGroup: QuantityGroup = {
  id: 'sideBearings',
  name: 'Side bearings, centre plate and wedges',
  screen: 'wheels',
  subject: 'truck',
  howTo: {
    take: 'With the car standing level and the body on its centre plates, measure the gap at each side bearing. Look at the centre plate for grease, galling or a broken rim. Read how far each friction wedge has risen.',
    why: 'A truck that cannot turn holds its wheels at an angle to the rail; one without clearance lifts load off a wheel on twisted track.',
    bearsOn: ['wheelClimb', 'railRollover', 'harmonicRoll', 'defectiveCar'],
    spoiledBy: 'The car resting on one side bearing, jacked, or set on other trucks since.',
    figure: 'sideBearing',
  },
  quantities: [
    crossLength('truck', {
      id: 'sideBearingClearance',
      name: 'Side-bearing clearance',
      short: 'Side bearing',
      slots: LEFT_RIGHT,
      possibleIn: [0, 3],
      usualIn: [0.125, 0.5],
      referenceIn: [0.125, 0.4],
      referenceSource: 'common practice, no source',
    }),
    crossLength('truck', {
      id: 'wedgeRise',
      name: 'Friction wedge rise',
      short: 'Wedge rise',
      slots: LEFT_RIGHT,
      possibleIn: [-1, 3],
      usualIn: [0, 1],
      referenceIn: [0, 0.5],
      referenceSource: 'engineering judgement',
    }),
    {
      kind: 'choice',
      id: 'centrePlate',
      name: 'Centre plate',
      short: 'Centre plate',
      subject: 'truck',
      slots: [],
      choices: [
        { id: 'lubricated', label: 'Greased or lined' },
        { id: 'dry', label: 'Dry, polished' },
        { id: 'galled', label: 'Galled or binding' },
        { id: 'broken', label: 'Broken or worn rim' },
      ],
    },
    {
      kind: 'choice',
      id: 'springs',
      name: 'Springs',
      short: 'Springs',
      subject: 'truck',
      slots: LEFT_RIGHT,
      choices: [
        { id: 'sound', label: 'Sound and seated' },
        { id: 'broken', label: 'Broken' },
        { id: 'outOfPlace', label: 'Out of place' },
        { id: 'solid', label: 'Closed solid' },
      ],
    },
  ],
};
