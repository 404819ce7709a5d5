import type { Measure, QuantityGroup } from '../quantity';
import { ALONG, feet, pounds } from './build';

const length = (
  id: string,
  name: string,
  short: string,
  possibleFt: [number, number],
  usualFt: [number, number],
): Measure => ({
  kind: 'measure',
  id,
  name,
  short,
  subject: 'vehicle',
  slots: [],
  dimension: 'alongTrack',
  bareUnit: ALONG,
  possible: [feet(possibleFt[0]), feet(possibleFt[1])],
  usual: [feet(usualFt[0]), feet(usualFt[1])],
  defaultResolution: {
    halfWidth: feet(1 / 24),
    source: 'from the equipment register, to 1 in; common practice, no source',
  },
  reference: {
    low: feet(usualFt[0]),
    high: feet(usualFt[1]),
    source: 'ordinary freight equipment; engineering judgement',
  },
});

export const vehicleGroup: QuantityGroup = {
  id: 'vehicleSize',
  name: 'Weight and lengths',
  screen: 'train',
  subject: 'vehicle',
  howTo: {
    take: 'Weights from the consist or, better, from a scale with each truck and each side by itself. Lengths from the stencil or the equipment register: over pulling faces, between truck centres, between axles of one truck.',
    why: 'A light wheel climbs at a smaller side force; long and short cars coupled together push each other sideways in a curve.',
    bearsOn: ['wheelClimb', 'railRollover', 'inTrainForce'],
    spoiledBy: 'Waybill weights on a car that was never weighed. Weighing after lading was removed.',
    figure: 'vehicleLengths',
  },
  quantities: [
    {
      kind: 'measure',
      id: 'grossWeight',
      name: 'Gross weight on rail',
      short: 'Gross weight',
      subject: 'vehicle',
      slots: [],
      dimension: 'mass',
      bareUnit: { us: 'lb', metric: 't' },
      possible: [pounds(5_000), pounds(1_200_000)],
      usual: [pounds(30_000), pounds(440_000)],
      defaultResolution: {
        halfWidth: pounds(1_000),
        source: 'light weight stencil and waybill; common practice, no source',
      },
      reference: {
        low: pounds(45_000),
        high: pounds(286_000),
        source: 'empty to fully loaded four-axle freight car; engineering judgement',
      },
    },
    length('lengthOverPullingFaces', 'Length over pulling faces', 'Length', [10, 400], [35, 100]),
    length('truckCentres', 'Truck centres', 'Truck centres', [6, 150], [20, 70]),
    length('axleSpacing', 'Axle spacing in a truck', 'Axle spacing', [3, 25], [5, 9.5]),
    {
      kind: 'count',
      id: 'axleCount',
      name: 'Axles',
      short: 'Axles',
      subject: 'vehicle',
      slots: [],
      possible: [2, 40],
    },
  ],
};
