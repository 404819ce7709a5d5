import type { LoadedCase } from '~/app/case.server';
import { caseContext, caseFindings } from '~/app/findings/case-findings.server';
import { gaugeSpan } from '~/lib/figures/gauge-span';
import { gaugeSpanData } from '~/lib/figures/gauge-span-data';
import { railLoad } from '~/lib/figures/rail-load';
import { railLoadData } from '~/lib/figures/rail-load-data';
import type { Figure } from '~/lib/figures/shapes';

/** Small enough for a phone and for half a page alike, so the width asked for does not matter. */
const WIDTH = 440;

const drawRolling =
  (rail: 'flanging' | 'other') =>
  (loaded: LoadedCase): Figure | null => {
    const data = railLoadData(caseContext(loaded), caseFindings(loaded), rail);
    return data && railLoad(data, { width: WIDTH });
  };

function drawDropping(loaded: LoadedCase): Figure | null {
  const data = gaugeSpanData(caseContext(loaded), caseFindings(loaded));
  return data && gaugeSpan(data, { width: WIDTH });
}

/** Drawings of the ways off the rail, by the names they have in addresses. */
export const MECHANICS_DRAWINGS = {
  'rolling-flanging': drawRolling('flanging'),
  'rolling-other': drawRolling('other'),
  dropping: drawDropping,
} as const;
