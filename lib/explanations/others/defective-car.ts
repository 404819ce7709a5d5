import type { OtherExplanation } from '../explanation';

export const defectiveCar: OtherExplanation = {
  id: 'defectiveCar',
  name: 'Defective car body or truck',
  description: 'A car part failed or hung: side frame, bolster, centre sill, brake rigging.',
  speaksFor: [
    'Old cracks in frame, bolster or sill',
    'Parts dragging, marks on ties before the first wheel mark',
    'A truck that would not turn, springs broken or out of place',
  ],
  toExclude: [
    'Look at both trucks, centre plates, side bearings, springs and wedges',
    'Walk back for dragging marks and parts',
    'Inspection and repair record of the car',
  ],
  observations: ['obsTruckStiff', 'obsSideBearingHard'],
  findings: [],
  readings: ['sideBearingClearance', 'centrePlate', 'springs', 'wedgeRise'],
};
