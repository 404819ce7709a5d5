import type { Context } from '../findings/context';
import { backToBackOf } from '../findings/wheels/back-to-back-of';
import { systemOf } from './case-marks';
import type { WheelClockData } from './wheel-clock';

/** Undisturbed back-to-back readings of one wheelset with the fit the findings use; null when there are none. */
export function wheelClockData(context: Context, wheelsetId: string, name: string): WheelClockData | null {
  const found = backToBackOf(context, wheelsetId);
  if (found === null) return null;
  const readings = context.read.slots('wheelset', wheelsetId, 'backToBack').flatMap((slot) => {
    const taken = context.read.take('wheelset', wheelsetId, 'backToBack', slot);
    if (taken === null || slot === '' || !Number.isFinite(Number(slot))) return [];
    return [{ clockRad: (Number(slot) * Math.PI) / 180, valueMm: taken.value, uMm: taken.u }];
  });
  return { system: systemOf(context.record), name, readings, fit: found.fit };
}
