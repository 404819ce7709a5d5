import type { Method } from '../findings/finding';

/**
 * Rate of change of gauge (mm of gauge per mm of track) between two places: (b − a)/distance.
 * `fromMm`, `toMm` gauge; `distanceM` > 0 along the track.
 */
export function gaugeRate(fromMm: number, toMm: number, distanceM: number): number {
  return (toMm - fromMm) / (distanceM * 1000);
}

export const gaugeChangeMethod: Method = {
  id: 'gauge-change',
  name: 'Change of gauge along the track',
  formula:
    'change = G(b) − G(a) for every pair of stations a, b within 31 ft; rate = (G(b) − G(a))/(b − a) for neighbouring stations within 31 ft. G: gauge. Positive where gauge widens in the direction of travel.',
  validRange: 'Stations up to 31 ft apart. Stations without gauge are passed over; nothing is interpolated.',
  sources: [
    {
      text: '49 CFR part 213 limits gauge and not its change; the 31 ft are that of the rule on runoff and near the truck centres of a short car',
      status: 'engineering judgement',
    },
  ],
};
