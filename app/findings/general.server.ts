import type { LoadedCase } from '~/app/case.server';
import { caseFindings } from './case-findings.server';
import { findingView, type FindingView } from './view.server';

/** Findings of the mechanics, by the start of what they are, in the order found. */
export const generalFindings = (loaded: LoadedCase, starts: readonly string[]): readonly FindingView[] =>
  caseFindings(loaded)
    .filter(({ part, what }) => part === 'mechanics' && starts.some((start) => what.startsWith(start)))
    .map((finding) => findingView(loaded, finding));
