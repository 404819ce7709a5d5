import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { caseContext, caseFindings } from '~/app/findings/case-findings.server';
import { findingHref } from '~/app/findings/view.server';
import { pageOf, type Paged } from '~/app/paging';
import { systemOf } from '~/app/readings/take.server';
import { stationClasses, type StationClass } from '~/lib/findings/track/class-met';
import { formatMeasure, formatWithUncertainty } from '~/lib/readings/format';
import { RULE_QUANTITIES } from '~/lib/rules/rule-quantity';

const PAGE = 12;

/** What each station meets; worked out once for the case as it stands. */
export const classesMet = (loaded: LoadedCase): readonly StationClass[] =>
  derived(loaded, 'classes met', () => stationClasses(caseContext(loaded), caseFindings(loaded)));

export type ExceptionRow = {
  readonly key: string;
  readonly station: string;
  readonly what: string;
  readonly href: string;
  readonly section: string;
  readonly reading: string;
  readonly limit: string;
  readonly excess: string;
  readonly chance: string;
};

export type ClassesView = {
  /** The class readings are held against, and whose limits it has. */
  readonly inForce: string;
  /** Classes with how many stations meet them and no higher one. */
  readonly counts: readonly { readonly label: string; readonly count: number }[];
  readonly exceptions: Paged<ExceptionRow>;
};

const percent = (share: number): string =>
  share < 0.005 ? 'under 1 %' : share > 0.995 ? 'over 99 %' : `${Math.round(share * 100)} %`;

function rowsOf(loaded: LoadedCase): readonly ExceptionRow[] {
  const system = systemOf(loaded.record.fields);
  return classesMet(loaded).flatMap(({ station, exceptions }) =>
    exceptions.map(({ finding, exception }): ExceptionRow => {
      const { quantity, limit, excess, probability } = exception;
      const { unit } = RULE_QUANTITIES[quantity];
      const amount = (value: number): string =>
        unit === 'count'
          ? String(value)
          : formatMeasure(value, { dimension: 'crossLength', system, form: 'fraction' });
      return {
        key: `${finding.id} ${limit.limit.id}`,
        station: station.name,
        what: RULE_QUANTITIES[quantity].name,
        href: findingHref(loaded.caseId, finding.id),
        section: limit.limit.citation,
        reading: formatWithUncertainty(finding.value, finding.u, finding.dimension, system, {
          form: 'fraction',
        }),
        limit: `${limit.limit.sense === 'max' ? 'at most' : 'at least'} ${limit.printed}`,
        excess: amount(excess),
        chance: percent(probability),
      };
    }),
  );
}

/** What the stations meet, and what of the class in force they do not; null where nothing is compared. */
export function classesView(loaded: LoadedCase, page: string | null): ClassesView | null {
  const all = classesMet(loaded);
  const { track, trackClass } = caseContext(loaded).rules;
  if (all.length === 0 || track === undefined) return null;
  const counts = new Map<string | null, number>();
  for (const { highest } of all) counts.set(highest, (counts.get(highest) ?? 0) + 1);
  return {
    inForce: trackClass === undefined ? '' : `${trackClass.label}, ${track.name}`,
    counts: [...track.classes.map(({ label }) => label), null].flatMap((label) => {
      const count = counts.get(label) ?? 0;
      return count === 0 ? [] : [{ label: label ?? 'not even the lowest', count }];
    }),
    exceptions: pageOf(
      derived(loaded, 'exceptions of the class', () => rowsOf(loaded)),
      page,
      PAGE,
    ),
  };
}
