import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { caseFindings } from '~/app/findings/case-findings.server';
import type { Finding } from '~/lib/findings/finding';

export type NotFoundYet = { readonly title: string; readonly missing: string; readonly screen: string };

/** Where the readings of a mechanism are entered differs from input to input, so it leads nowhere alone. */
const screenOf = (part: Finding['part']): string => (part === 'mechanics' ? 'explanations' : part);

/** What could not be worked out, with the readings it waits for; single stations are left to their sheet. */
export const notFoundYet = (loaded: LoadedCase): readonly NotFoundYet[] =>
  derived(loaded, 'not found yet', () =>
    caseFindings(loaded).flatMap((finding) =>
      finding.kind !== 'notMeasured' || finding.subject?.kind === 'station'
        ? []
        : [{ title: finding.title, missing: finding.missing.join('; '), screen: screenOf(finding.part) }],
    ),
  );
