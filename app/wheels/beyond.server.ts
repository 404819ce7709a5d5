import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { caseFindings } from '~/app/findings/case-findings.server';

/** How many findings of each thing lie beyond a limit or failed a check, by the thing's id. */
export const beyondLimits = (loaded: LoadedCase): ReadonlyMap<string, number> =>
  derived(loaded, 'beyond limits', () => {
    const counts = new Map<string, number>();
    for (const finding of caseFindings(loaded)) {
      if (finding.subject === null) continue;
      const beyond =
        finding.kind === 'measured'
          ? finding.limits.some(({ exceeded }) => exceeded)
          : finding.kind === 'passFail' && !finding.pass;
      if (beyond) counts.set(finding.subject.id, (counts.get(finding.subject.id) ?? 0) + 1);
    }
    return counts;
  });
