import type { LoadedCase } from '~/app/case.server';
import type { Actor } from '~/db/actor';
import { removeTrace, restoreTrace, updateTrace } from '~/db/traces';
import type { Trace } from '~/lib/case/trace';
import type { HandBoxes } from './hand';
import { readHand, sentHand } from './hand.server';
import type { SaidBoxes } from './said';
import { readSaid, sentBoxes } from './said.server';

/** What became of a form of the page of an outline. */
export type TraceAnswer =
  | { readonly ok: true; readonly done: string }
  | {
      readonly ok: false;
      readonly intent: 'hand' | 'said' | 'remove';
      readonly errors: Readonly<Record<string, string>>;
      readonly hand?: HandBoxes;
      readonly said?: SaidBoxes;
    };

type Saving = {
  readonly loaded: LoadedCase;
  readonly trace: Trace;
  readonly form: FormData;
  readonly actor: Actor;
};

function saveHand({ loaded: { db, caseId }, trace, form, actor }: Saving): TraceAnswer {
  const boxes = sentHand(form);
  const { trial, errors } = readHand(boxes);
  const { mirrored, ...moved } = trial;
  const reason = boxes.reason.trim();
  const still = moved.dxMm === 0 && moved.dyMm === 0 && moved.angleRad === 0;
  const wrong = {
    ...errors,
    ...(still || reason !== '' ? {} : { reason: 'Say why: a few words, such as “the paper had slipped”.' }),
  };
  if (Object.keys(wrong).length > 0) return { ok: false, intent: 'hand', errors: wrong, hand: boxes };
  updateTrace(db, caseId, trace.id, { mirrored, hand: still ? null : { ...moved, reason } }, actor);
  return { ok: true, done: 'The outline lies as you placed it.' };
}

function saveSaid({ loaded: { db, caseId, record }, trace, form, actor }: Saving): TraceAnswer {
  const { said, errors } = readSaid(form, record);
  if (Object.keys(errors).length > 0) return { ok: false, intent: 'said', errors, said: sentBoxes(form) };
  const { mirrored: _, ...change } = said;
  updateTrace(db, caseId, trace.id, change, actor);
  return { ok: true, done: 'What is said of the outline was changed.' };
}

/** Carries out what a form of the page asks for. */
export function saveTrace(saving: Saving): TraceAnswer {
  const { loaded, trace, form, actor } = saving;
  const { db, caseId } = loaded;
  switch (form.get('intent')) {
    case 'hand':
      return saveHand(saving);
    case 'remove': {
      const reason = String(form.get('reason') ?? '').trim();
      if (reason === '')
        return { ok: false, intent: 'remove', errors: { reason: 'Say why: a few words are enough.' } };
      removeTrace(db, caseId, trace.id, reason, actor);
      return { ok: true, done: 'The outline was removed. It stays in the case, with the reason.' };
    }
    case 'restore':
      restoreTrace(db, caseId, trace.id, actor);
      return { ok: true, done: 'The outline is back.' };
    default:
      return saveSaid(saving);
  }
}
