import { type ReferenceShape } from '../shape';
import { FREIGHT_NOTES, freightWheelPieces } from './north-american';

export const freightNarrow: ReferenceShape = {
  id: 'freight-narrow',
  name: 'North American freight wheel, narrow flange, 75°, 1:20',
  shape: 'wheel',
  pieces: freightWheelPieces(1 + 5 / 32),
  source: {
    text: 'Proportions of the narrow-flange contour in AAR specification M-107/M-208 (in force from 1990): 1 in high, 75°, 1:20, rim 5 23/32 in; thickness and radii',
    status: 'from memory',
  },
  notes: [
    ...FREIGHT_NOTES,
    'The throat of the standard has several radii; the two drawn here (1/2 in and 1 1/2 in) stand for them.',
  ],
};
