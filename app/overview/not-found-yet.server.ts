import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { caseFindings } from '~/app/findings/case-findings.server';
import { findingPlace } from '~/app/findings/place';

export type NotFoundYet = { readonly title: string; readonly missing: string; readonly href: string };

/** What could not be worked out, with the readings it waits for; single stations are left to their sheet. */
export const notFoundYet = (loaded: LoadedCase): readonly NotFoundYet[] =>
  derived(loaded, 'not found yet', () =>
    caseFindings(loaded).flatMap((finding) =>
      finding.kind !== 'notMeasured' || finding.subject?.kind === 'station'
        ? []
        : [
            {
              title: finding.title,
              missing: finding.missing.join('; '),
              href: findingPlace(loaded.record, finding),
            },
          ],
    ),
  );
