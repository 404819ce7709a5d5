import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { caseContext, caseFindings } from '~/app/findings/case-findings.server';
import { findingHref } from '~/app/findings/view.server';
import { pageOf, type Paged } from '~/app/paging';
import { systemOf } from '~/app/readings/take.server';
import {
  otherClasses,
  stationClasses,
  type ClassException,
  type OtherClass,
  type StationClass,
} from '~/lib/findings/track/class-met';
import { exceptionWords } from '~/lib/findings/track/exception-words';
import { formatMeasure, formatWithUncertainty } from '~/lib/readings/format';

const PAGE = 12;
const NOT_EVEN = 'not even the lowest';

/** What each station meets; worked out once for the case as it stands. */
export const classesMet = (loaded: LoadedCase): readonly StationClass[] =>
  derived(loaded, 'classes met', () => stationClasses(caseContext(loaded), caseFindings(loaded)));

/** What turnouts and the segment as a whole meet. */
const othersMet = (loaded: LoadedCase): readonly OtherClass[] =>
  derived(loaded, 'classes met elsewhere', () => otherClasses(caseContext(loaded), caseFindings(loaded)));

export type ExceptionRow = {
  readonly key: string;
  readonly place: string;
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
  /** What turnouts, and the segment as a whole, meet. */
  readonly others: readonly { readonly name: string; readonly highest: string }[];
  /** Classes with how many stations meet them and no higher one. */
  readonly counts: readonly { readonly label: string; readonly count: number }[];
  readonly exceptions: Paged<ExceptionRow>;
};

const percent = (share: number): string =>
  share < 0.005 ? 'under 1 %' : share > 0.995 ? 'over 99 %' : `${Math.round(share * 100)} %`;

function rowOf(loaded: LoadedCase, place: string, each: ClassException): ExceptionRow {
  const system = systemOf(loaded.record.fields);
  const { what, section, limit, answer, excess, unit, probability } = exceptionWords(each);
  const { finding } = each;
  return {
    key: `${finding.id} ${each.kind === 'limit' ? each.exception.limit.limit.id : each.condition.id}`,
    place,
    what,
    href: findingHref(loaded.caseId, finding.id),
    section,
    reading:
      answer ??
      (each.kind === 'limit'
        ? formatWithUncertainty(each.finding.value, each.finding.u, each.finding.dimension, system, {
            form: 'fraction',
          })
        : ''),
    limit,
    excess:
      excess === null
        ? '–'
        : unit === 'count'
          ? String(excess)
          : formatMeasure(excess, { dimension: 'crossLength', system, form: 'fraction' }),
    chance: probability === null ? '–' : percent(probability),
  };
}

const rowsOf = (loaded: LoadedCase): readonly ExceptionRow[] => [
  ...othersMet(loaded).flatMap(({ name, exceptions }) => exceptions.map((each) => rowOf(loaded, name, each))),
  ...classesMet(loaded).flatMap(({ station, exceptions }) =>
    exceptions.map((each) => rowOf(loaded, station.name, each)),
  ),
];

/** What the stations meet, and what of the class in force they do not; null where nothing is compared. */
export function classesView(loaded: LoadedCase, page: string | null): ClassesView | null {
  const all = classesMet(loaded);
  const { track, trackClass } = caseContext(loaded).rules;
  const others = othersMet(loaded);
  if (all.length + others.length === 0 || track === undefined) return null;
  const counts = new Map<string | null, number>();
  for (const { highest } of all) counts.set(highest, (counts.get(highest) ?? 0) + 1);
  return {
    inForce: trackClass === undefined ? '' : `${trackClass.label}, ${track.name}`,
    others: others.map(({ name, highest }) => ({ name, highest: highest ?? NOT_EVEN })),
    counts: [...track.classes.map(({ label }) => label), null].flatMap((label) => {
      const count = counts.get(label) ?? 0;
      return count === 0 ? [] : [{ label: label ?? NOT_EVEN, count }];
    }),
    exceptions: pageOf(
      derived(loaded, 'exceptions of the class', () => rowsOf(loaded)),
      page,
      PAGE,
    ),
  };
}
