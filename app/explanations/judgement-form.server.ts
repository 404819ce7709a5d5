import type { LoadedCase } from '~/app/case.server';
import type { Actor } from '~/db/actor';
import { clearJudgement, setJudgement } from '~/db/narrative';
import { judgementTable, refusal } from '~/lib/explanations/judgement-table';

export type JudgementRefusal = {
  readonly path: string;
  readonly value: string;
  readonly reason: string;
  readonly message: string;
};

/** Keeps a changed judgement, or takes the change back; null when done. */
export function keepJudgement(
  { db, caseId }: LoadedCase,
  form: FormData,
  actor: Actor,
): JudgementRefusal | null {
  const path = String(form.get('path') ?? '');
  const value = String(form.get('value') ?? '').trim();
  const reason = String(form.get('reason') ?? '').trim();
  const refuse = (message: string): JudgementRefusal => ({ path, value, reason, message });
  const judgement = judgementTable().find((one) => one.path === path);
  if (judgement !== undefined && form.get('intent') === 'clear') {
    clearJudgement(db, caseId, path, actor);
    return null;
  }
  // Number('') is 0, which is refused with the range like any other certainty.
  const change = { path, value: Number(value), reason };
  const message = refusal(judgement, change);
  if (message !== null) return refuse(message);
  setJudgement(db, caseId, change, actor);
  return null;
}
