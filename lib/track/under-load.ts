import type { Method } from '../findings/finding';

/**
 * Gauge with the movement seen under load: standing gauge plus the sideways movement of both
 * rails, each ≥ 0 away from the middle of the track. All mm. Source: 49 CFR 213.13.
 */
export function gaugeUnderLoadMm(standingMm: number, leftMm: number, rightMm: number): number {
  return standingMm + leftMm + rightMm;
}

/**
 * Crosslevel with the downward movement seen under load: standing crosslevel less the movement of
 * the rail counted as the higher one, plus that of the other. All mm, movements ≥ 0 downward.
 * Source: 49 CFR 213.13.
 */
export function crosslevelUnderLoadMm(standingMm: number, highDownMm: number, lowDownMm: number): number {
  return standingMm - highDownMm + lowDownMm;
}

export const underLoadMethod: Method = {
  id: 'movement-under-load',
  name: 'Movement under load added to the standing reading',
  formula:
    'gauge under load = gauge + sideways movement of the left rail + of the right rail; crosslevel under load = crosslevel − downward movement of the high rail + of the low rail.',
  validRange:
    'Movement as the polished strips at plates, spikes and base show it, which is at most what the heaviest wheel made. Rotation of the rail adds to it and shows at the base only in part.',
  sources: [{ text: '49 CFR 213.13', status: 'from memory' }],
};
