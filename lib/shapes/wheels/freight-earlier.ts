import { type ReferenceShape } from '../shape';
import { earlierFreightWheelPieces, FREIGHT_NOTES } from './north-american';

export const freightEarlier: ReferenceShape = {
  id: 'freight-earlier',
  name: 'North American freight wheel before 1990, 70°, 1:20',
  shape: 'wheel',
  pieces: earlierFreightWheelPieces(1 + 5 / 32),
  source: {
    text: 'Contour in use before 1990: 70° flange angle, 3/4 in throat radius, 1:20 tread, as described in papers on North American wheel shapes; flange thickness and tip',
    status: 'from memory',
  },
  notes: FREIGHT_NOTES,
};
