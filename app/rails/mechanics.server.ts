import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { caseContext, caseFindings } from '~/app/findings/case-findings.server';
import { findingView, type FindingView } from '~/app/findings/view.server';
import type { Context } from '~/lib/findings/context';
import type { Finding } from '~/lib/findings/finding';
import { gaugeSpan } from '~/lib/figures/gauge-span';
import { gaugeSpanData } from '~/lib/figures/gauge-span-data';
import { railLoad } from '~/lib/figures/rail-load';
import { railLoadData } from '~/lib/figures/rail-load-data';
import type { Figure } from '~/lib/figures/shapes';
import { toSvg } from '~/lib/figures/svg';

/** A way off the rail, with what was found about it and drawings of it as SVG. */
export type MechanicsPart = {
  readonly id: string;
  readonly title: string;
  readonly findings: readonly FindingView[];
  readonly figures: readonly string[];
};

type Draw = (context: Context, findings: readonly Finding[]) => readonly (Figure | null)[];

const WIDTH = 440;

const drawRolling: Draw = (context, findings) =>
  (['flanging', 'other'] as const).map((rail) => {
    const data = railLoadData(context, findings, rail);
    return data && railLoad(data, { width: WIDTH });
  });

const drawSpan: Draw = (context, findings) => {
  const data = gaugeSpanData(context, findings);
  return [data && gaugeSpan(data, { width: WIDTH })];
};

/** By the start of what a finding is; the last takes what is left. */
const PARTS: readonly {
  readonly id: string;
  readonly title: string;
  readonly starts: readonly string[];
  readonly draw?: Draw;
}[] = [
  { id: 'climbing', title: 'Climbing the rail', starts: ['climb', 'axleSum'] },
  { id: 'rolling', title: 'Rolling the rail over', starts: ['rollover'], draw: drawRolling },
  { id: 'dropping', title: 'Dropping in between the rails', starts: ['dropIn'], draw: drawSpan },
  { id: 'loads', title: 'Loads on the curve', starts: [''] },
];

/** What wheel, rail and track give together, whichever rail is open. */
export const mechanicsParts = (loaded: LoadedCase): readonly MechanicsPart[] =>
  derived(loaded, 'mechanics', () => {
    const all = caseFindings(loaded);
    const placed = new Set<Finding>();
    return PARTS.map(({ id, title, starts, draw }) => {
      const own = all.filter(
        (finding) =>
          finding.part === 'mechanics' &&
          !placed.has(finding) &&
          starts.some((start) => finding.what.startsWith(start)),
      );
      for (const finding of own) placed.add(finding);
      const figures = draw?.(caseContext(loaded), all) ?? [];
      return {
        id,
        title,
        findings: own.map((finding) => findingView(loaded, finding)),
        figures: figures.flatMap((figure) => (figure ? [toSvg(figure)] : [])),
      };
    }).filter(({ findings }) => findings.length > 0);
  });
