import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { caseFindings } from '~/app/findings/case-findings.server';
import { findingView, type FindingView } from '~/app/findings/view.server';
import { pageOf, type Paged } from '~/app/paging';
import type { Finding } from '~/lib/findings/finding';

const PAGE = 12;

/** A chance of exceeding a limit that deserves to be seen although the value lies within. */
const CLOSE = 0.05;

type TrackFindings = {
  /** About the sheet as a whole: the worst of each kind, averages, speeds. */
  readonly whole: readonly FindingView[];
  /** About one station, beyond a limit or close to one. */
  readonly stations: Paged<FindingView>;
};

const isClose = (finding: Finding): boolean =>
  finding.kind === 'measured' &&
  finding.limits.some(({ exceeded, probabilityExceeds }) => exceeded || probabilityExceeds >= CLOSE);

const trackFindings = (loaded: LoadedCase): readonly Finding[] =>
  caseFindings(loaded).filter(({ part }) => part === 'track');

/** The track's findings: those of one station when it is named, else those beyond or close to a limit. */
export function trackFindingsView(
  loaded: LoadedCase,
  stationId: string | null,
  page: string | null,
): TrackFindings {
  const ofStations = derived(loaded, 'track findings of stations', () =>
    trackFindings(loaded).filter(({ subject }) => subject !== null),
  );
  const chosen = ofStations.filter((finding) =>
    stationId === null ? isClose(finding) : finding.subject?.id === stationId,
  );
  const paged = pageOf(chosen, page, PAGE);
  return {
    whole: derived(loaded, 'track findings of the whole', () =>
      trackFindings(loaded)
        .filter(({ subject }) => subject === null)
        .map((finding) => findingView(loaded, finding)),
    ),
    stations: { ...paged, items: paged.items.map((finding) => findingView(loaded, finding)) },
  };
}
