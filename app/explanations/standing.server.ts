import type { LoadedCase } from '~/app/case.server';
import type { Actor } from '~/db/actor';
import { clearStanding, setStanding } from '~/db/narrative';
import { EXPLANATION_IDS, OTHER_EXPLANATION_IDS } from '~/lib/explanations/explanation';

const KNOWN: ReadonlySet<string> = new Set([...EXPLANATION_IDS, ...OTHER_EXPLANATION_IDS]);

/** A standing that was refused, with all that was entered. */
export type StandingRefusal = {
  readonly explanation: string;
  readonly standing: string;
  readonly reason: string;
  readonly message: string;
};

/** Keeps what the form says of one explanation; null when it is kept. */
export function keepStanding(
  { db, caseId }: LoadedCase,
  form: FormData,
  actor: Actor,
): StandingRefusal | null {
  const explanation = String(form.get('explanation') ?? '');
  const standing = String(form.get('standing') ?? '');
  const reason = String(form.get('reason') ?? '').trim();
  const refuse = (message: string): StandingRefusal => ({ explanation, standing, reason, message });
  if (!KNOWN.has(explanation)) return refuse('There is no such explanation. Choose one of the list.');
  if (standing === 'notConsidered') {
    clearStanding(db, caseId, explanation, actor);
    return null;
  }
  if (standing !== 'excluded' && standing !== 'stands')
    return refuse('Choose excluded, stands or not yet considered.');
  if (reason === '') return refuse('Write the reason: which reading, mark or photo it rests on.');
  setStanding(db, caseId, { explanation, standing, reason }, actor);
  return null;
}
