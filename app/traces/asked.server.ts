import { redirect } from '@remix-run/node';
import type { LoadedCase } from '~/app/case.server';
import { placeOf } from '~/app/subjects/place';
import { aboutChoices, aboutKey, aboutOf, type TraceAbout } from './about';

/** What the outline that is being brought in is of; leads to the choice when the address names nothing. */
export function askedAbout({ record, caseId }: LoadedCase, search: URLSearchParams): TraceAbout {
  const about = aboutOf(record, search.get('about') ?? '');
  if (about === null) throw redirect(`/cases/${caseId}/traces/new`);
  return about;
}

/** What the screens show of it. */
export function aboutView({ record, caseId }: LoadedCase, about: TraceAbout) {
  const key = aboutKey(about);
  return {
    key,
    shape: about.shape,
    name: aboutChoices(record).find(({ id }) => id === key)?.label ?? '',
    back: placeOf(caseId, about.subject),
  };
}

export type AboutView = ReturnType<typeof aboutView>;
