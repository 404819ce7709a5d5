import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { figureRef, type FigureRef } from '~/app/figures/view.server';
import { caseFindings } from '~/app/findings/case-findings.server';
import { findingView, type FindingView } from '~/app/findings/view.server';
import type { Finding } from '~/lib/findings/finding';
import { WAYS, wayOf, type Way } from './ways';

/** What wheel, rail and track give together, one way off the rail at a time. */
export type MechanicsView = {
  readonly tabs: readonly { readonly id: Way['id']; readonly name: string; readonly count: number }[];
  readonly open: Way['id'];
  readonly findings: readonly FindingView[];
  readonly figures: readonly FigureRef[];
};

const byWay = (loaded: LoadedCase): ReadonlyMap<Way, readonly Finding[]> =>
  derived(loaded, 'mechanics by way', () => {
    const mechanics = caseFindings(loaded).filter(({ part }) => part === 'mechanics');
    return new Map(WAYS.map((way) => [way, mechanics.filter(({ what }) => wayOf(what) === way)]));
  });

/** The way that the address names, else the first. */
export function mechanicsView(loaded: LoadedCase, named: string | null): MechanicsView {
  const ways = byWay(loaded);
  const open = WAYS.find(({ id }) => id === named) ?? WAYS[0];
  return {
    tabs: WAYS.map((way) => ({ id: way.id, name: way.title, count: ways.get(way)?.length ?? 0 })),
    open: open.id,
    findings: (ways.get(open) ?? []).map((finding) => findingView(loaded, finding)),
    figures: open.drawings.flatMap((name) => figureRef(loaded, name) ?? []),
  };
}
