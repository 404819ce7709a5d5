import { redirect } from '@remix-run/node';
import { notFound, type LoadedCase } from '~/app/case.server';
import type { Actor } from '~/db/actor';
import type { SubjectRef } from '~/lib/case/record';
import { SUBJECT_KINDS, type SubjectKind } from '~/lib/readings/quantity';
import { KEPT_PARAM, type ReadingsAnswer } from './cells';
import { takeReadings } from './take.server';

export type AnsweredReadings = { readonly answer: ReadingsAnswer; readonly status: number };

const isSubjectKind = (text: unknown): text is SubjectKind =>
  (SUBJECT_KINDS as readonly unknown[]).includes(text);

function subjectIn(form: FormData, { record, caseId }: LoadedCase): SubjectRef {
  const kind = form.get('subjectKind');
  const id = form.get('subjectId');
  const there =
    isSubjectKind(kind) &&
    (kind === 'case' ? id === caseId : record.entities[kind].some((entity) => entity.id === id));
  if (!there) throw notFound('What these readings are about is not in this case.');
  return { kind, id: String(id) };
}

/**
 * Takes what a `ReadingsForm` sent; null when the form sent is another one. When every box could be
 * kept it throws a redirect to the same page, so that loading it again sends nothing twice.
 */
export function answerReadings(
  request: Request,
  form: FormData,
  loaded: LoadedCase,
  actor: Actor,
): AnsweredReadings | null {
  if (form.get('intent') !== 'readings') return null;
  const groups = String(form.get('groups') ?? '').split(' ');
  const answer = takeReadings(form, loaded, subjectIn(form, loaded), groups, actor);
  const refused = Object.keys(answer.errors).length > 0;
  if (answer.saved > 0 && !refused && answer.questions.length === 0) {
    const back = new URL(request.url);
    back.searchParams.set(KEPT_PARAM, `${answer.saved} ${answer.form}`);
    throw redirect(back.pathname + back.search);
  }
  // Pages are read anew after an answer of 200 alone, which shows what was kept beside what was not.
  return { answer, status: refused && answer.saved === 0 ? 422 : 200 };
}
