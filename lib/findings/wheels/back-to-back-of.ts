import { fitBackToBack, type BackToBackFit } from '../../wheel/back-to-back';
import { distinct, readingsOf } from '../build';
import type { Context } from '../context';
import type { Taken } from '../reading-index';

export type BackToBack = {
  readonly mean: Taken;
  readonly least: Taken;
  /** Greatest less least round the wheel; null when it was read at too few places to tell. */
  readonly swing: Taken | null;
  readonly fit: BackToBackFit | null;
  readonly places: number;
};

/** Back-to-back of one wheelset from its clock positions; null when none was read undisturbed. */
export function backToBackOf(context: Context, wheelsetId: string): BackToBack | null {
  // By the clock and not as entered: the draws of a mean are keyed by its readings in their order.
  const slots = [...context.read.slots('wheelset', wheelsetId, 'backToBack')].sort(
    (a, b) => Number(a) - Number(b),
  );
  const read = slots.flatMap((slot) => {
    const taken = context.read.take('wheelset', wheelsetId, 'backToBack', slot);
    const degrees = Number(slot);
    return taken === null ? [] : [{ degrees: slot === '' ? NaN : degrees, taken }];
  });
  const [first, ...others] = read.map(({ taken }) => taken);
  if (first === undefined) return null;
  const all = [first, ...others];
  const shared = {
    readings: readingsOf(first, ...others),
    remarks: distinct([
      ...all.flatMap(({ remarks }) => remarks),
      ...(read.length < slots.length
        ? [`${slots.length - read.length} of ${slots.length} places left out: not read undisturbed.`]
        : []),
    ]),
  };
  // The fit wants one uncertainty for all: the largest, so that none is made better than it is.
  const u = Math.max(...all.map((taken) => taken.u));
  const placed = read.filter(({ degrees }) => Number.isFinite(degrees));
  const fit = fitBackToBack(
    placed.map(({ degrees, taken }) => ({ clockRad: (degrees * Math.PI) / 180, backToBackMm: taken.value })),
    u,
  );
  if (fit.kind === 'fitted') {
    const as = (value: number, uncertainty: number): Taken => ({ ...shared, value, u: uncertainty });
    return {
      mean: as(fit.meanMm, fit.uMeanMm),
      least: as(fit.leastMm, fit.uLeastMm),
      swing: as(fit.swingMm, fit.uSwingMm),
      fit,
      places: read.length,
    };
  }
  const places = `Read at ${read.length} place${read.length === 1 ? '' : 's'} only: how it varies round the wheel is not known.`;
  const smallest = all.reduce((least, each) => (each.value < least.value ? each : least), first);
  return {
    mean: {
      ...shared,
      value: all.reduce((sum, taken) => sum + taken.value, 0) / all.length,
      u: u / Math.sqrt(all.length),
      remarks: distinct([...shared.remarks, places]),
    },
    least: { ...smallest, remarks: distinct([...smallest.remarks, places]) },
    swing: null,
    fit: null,
    places: read.length,
  };
}
