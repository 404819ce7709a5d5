import type { QuantityGroup } from '../quantity';
import { question } from './build';

export const exceptedTrackGroup: QuantityGroup = {
  id: 'exceptedTrack',
  name: 'Excepted track',
  screen: 'track',
  subject: 'case',
  onlyWhere: { field: 'trackClass', is: 'excepted' },
  howTo: {
    take: 'Copy from the timetable, bulletins and inspection records in force on the day, and say in the note which. Count the placarded cars from the train list.',
    why: 'A segment is excepted track only while all of these hold (49 CFR 213.4). Where one does not, the limits of class 1 apply.',
    bearsOn: ['wideGauge', 'railRollover'],
    spoiledBy: 'Papers issued after the derailment.',
    figure: 'curveDesign',
  },
  quantities: [
    question('case', 'exceptedNamed', 'Named as excepted in timetable, instructions or orders', 'Named', [
      ['yes', 'Yes'],
      ['no', 'No'],
    ]),
    question(
      'case',
      'exceptedAdjacent',
      'A track within 30 ft used at the same time at more than 10 mph',
      'Track beside it',
      [
        ['no', 'None'],
        ['yes', 'Yes'],
      ],
    ),
    question('case', 'exceptedInspected', 'Inspected as often as class 1 track', 'Inspected', [
      ['yes', 'Yes'],
      ['no', 'No'],
    ]),
    question(
      'case',
      'exceptedBridge',
      'On a bridge, within 100 ft of one, or on a public street',
      'Bridge or street',
      [
        ['no', 'None of these'],
        ['noPlacarded', 'Yes, and no placarded cars move there'],
        ['placarded', 'Yes, and placarded cars move there'],
      ],
    ),
    question('case', 'exceptedPassenger', 'The train was an occupied passenger train', 'Passenger train', [
      ['no', 'No'],
      ['yes', 'Yes'],
    ]),
    {
      kind: 'count',
      id: 'placardedCars',
      name: 'Cars in the train required to be placarded',
      short: 'Placarded cars',
      subject: 'case',
      slots: [],
      possible: [0, 300],
    },
  ],
};
