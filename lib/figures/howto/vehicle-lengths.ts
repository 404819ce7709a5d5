import { across } from '../pieces/dimension';
import { words } from '../pieces/draw';
import { carSide } from '../pieces/car-side';
import { sketch } from './sketch';

export const vehicleLengths = sketch(
  'Lengths of a vehicle',
  'A car from the side: length over the pulling faces of its couplers, distance between truck centres, and distance between the axles of one truck.',
  [
    ...carSide({
      left: 24,
      right: 296,
      rail: 116,
      bodyTop: 42,
      bodyBottom: 92,
      truckFrom: 82,
      truckTo: 238,
      spacing: 36,
      wheel: 10,
    }),
    ...across(24, 296, 22, 82, 82, 'over pulling faces'),
    ...across(82, 238, 146, 118, 118, 'truck centres'),
    ...across(64, 100, 176, 118, 118, 'axle spacing'),
    words(160, 66, 'weight: each truck, each side', { anchor: 'middle', ink: 'faint' }),
  ],
);
