import type { Method } from '../findings/finding';
import { toCanonical } from '../readings/convert';

/** Length of jointed rail, which staggered joints repeat crosslevel in. */
export const RAIL_LENGTH_M = toCanonical(39, 'ft', 'alongTrack');

/** Natural frequency of roll of freight cars, Hz: high loaded ones low, others higher. */
export const ROLL_FREQUENCIES_HZ = [0.5, 0.8] as const;

/** Speed (m/s) at which rail of that length rocks a car at its own frequency: V = f·L. */
export const resonantSpeedMs = (frequencyHz: number, railLengthM: number = RAIL_LENGTH_M): number =>
  frequencyHz * railLengthM;

export const harmonicRollMethod: Method = {
  id: 'harmonic-roll',
  name: 'Harmonic roll screen: speed against resonance on staggered joints',
  formula:
    'V = f·L; f: natural frequency of roll, 0.5 to 0.8 Hz; L = 39 ft. Rocking builds up within about a quarter of it.',
  validRange:
    'Jointed rail with staggered joints, several low joints in a row; welded rail without low spots has nothing to rock the car. The crosslevel at the joints is judged with the track.',
  sources: [
    { text: 'Resonance of a driven oscillator', status: 'published' },
    {
      text: 'Roll of freight cars 0.5 to 0.8 Hz, about 13 to 21 mph on 39-ft rail',
      status: 'common practice, no source',
    },
  ],
};
