import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { caseContext } from '~/app/findings/case-findings.server';
import { toSvg } from '~/lib/figures/svg';
import { wheelClock } from '~/lib/figures/wheel-clock';
import { wheelClockData } from '~/lib/figures/wheel-clock-data';

const WIDTH = 360;

/** Back-to-back round one wheelset, as SVG; null when none was read undisturbed. */
export const wheelClockSvg = (loaded: LoadedCase, wheelsetId: string, name: string): string | null =>
  derived(loaded, `wheel clock ${wheelsetId}`, () => {
    const data = wheelClockData(caseContext(loaded), wheelsetId, name);
    return data && toSvg(wheelClock(data, { width: WIDTH }));
  });
