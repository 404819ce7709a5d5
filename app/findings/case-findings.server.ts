import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { findingsOf } from '~/lib/findings';
import {
  buildContext,
  FINDING_SEED,
  recorderPart,
  type Context,
  type FindingOptions,
} from '~/lib/findings/context';
import type { Finding } from '~/lib/findings/finding';
import { keepOnDisk } from './keep.server';
import { recorderMoment } from './recorder-speed.server';

/** What findings are computed with, besides the record. */
export const findingOptions = (loaded: LoadedCase): FindingOptions => ({
  seed: FINDING_SEED,
  recorder: recorderPart(recorderMoment(loaded)),
  keep: keepOnDisk,
});

/** What findings and their drawings look things up in. */
export const caseContext = (loaded: LoadedCase): Context =>
  derived(loaded, 'finding context', () => buildContext(loaded.record, findingOptions(loaded)));

/** All findings of the case as it stands. */
export const caseFindings = (loaded: LoadedCase): readonly Finding[] =>
  derived(loaded, 'findings', () => findingsOf(caseContext(loaded)));
