import { feet } from '../../readings/quantities/build';
import { BEHIND_TIP } from '../../readings/quantities/turnout';
import { across } from '../words';

/** A place behind the tip as it is called where it is one of the feet that are chalked, else by its distance. */
export function behindTip(behindMm: number): { readonly slot: string; readonly label: string } {
  const chalked = BEHIND_TIP.find((place) => feet(place.feet) * 1000 === behindMm);
  return chalked === undefined
    ? { slot: `mm${Math.round(behindMm)}`, label: across(behindMm) }
    : { slot: chalked.id, label: chalked.label };
}
