import { fromCanonical } from '../readings/convert';
import type { UnitSystem } from '../readings/unit';
import type { WearHistory } from './wear-history';

/** A distance run in whole thousands of miles or kilometres: "85,000 mi". */
export function distanceRunText(km: number, system: UnitSystem): string {
  const unit = system === 'us' ? 'mi' : 'km';
  const thousands = Math.round(fromCanonical(km * 1000, unit, 'alongTrack') / 1000);
  return `${(thousands * 1000).toLocaleString('en-US').replace('-', '−')} ${unit}`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** When a limit would be reached, with its 95 % interval, in a sentence. `limit`: how the limit is called. */
export function reachText({ reach, points }: WearHistory, limit: string | null, system: UnitSystem): string {
  if (reach === null || limit === null) return 'No limit is held against it.';
  if (reach.kind === 'never') return `${capital(limit)}: ${reach.why}`;
  const ends =
    reach.lowKm === null || reach.highKm === null
      ? 'the rate cannot be told from none, so that there is no interval'
      : `95 %: ${distanceRunText(reach.lowKm, system)} to ${distanceRunText(reach.highKm, system)}`;
  const past = reach.atKm <= (points[points.length - 1]?.distanceRunKm ?? 0);
  return `${capital(limit)}: the line ${past ? 'reached' : 'would reach'} it at ${distanceRunText(reach.atKm, system)} (${ends})${past ? '' : ', if it wears on as it did'}.`;
}

/** What the interval of a rate of wear rests on. */
export const intervalText = ({ scatterMm, intervalFrom }: WearHistory): string =>
  scatterMm === null
    ? 'from the uncertainties of the two alone, without scatter'
    : intervalFrom === 'scatter'
      ? 'from the scatter about the line'
      : 'from the uncertainties of the readings';
