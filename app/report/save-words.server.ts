import type { LoadedCase } from '~/app/case.server';
import type { Actor } from '~/db/actor';
import { saveNarrative } from '~/db/narrative';
import { WORDS, type WordsId } from './words';

/** What was refused, and all that was entered, so that nothing has to be typed again. */
export type WordsRefusal = {
  readonly entered: Readonly<Record<WordsId, string>>;
  readonly errors: Readonly<Partial<Record<WordsId, string>>>;
};

/** Keeps the investigator's words; null when they are kept. */
export function saveWords({ db, caseId }: LoadedCase, form: FormData, actor: Actor): WordsRefusal | null {
  const entered = Object.fromEntries(
    WORDS.map(({ id }) => [
      id,
      String(form.get(id) ?? '')
        .replace(/\r\n?/g, '\n')
        .trim(),
    ]),
  ) as Record<WordsId, string>;
  const errors = Object.fromEntries(
    WORDS.flatMap(({ id, label, most }) =>
      entered[id].length > most
        ? [[id, `${label} has ${entered[id].length} characters. Shorten it to ${most} or fewer.`]]
        : [],
    ),
  ) as WordsRefusal['errors'];
  if (Object.keys(errors).length > 0) return { entered, errors };
  saveNarrative(db, caseId, entered, actor);
  return null;
}
