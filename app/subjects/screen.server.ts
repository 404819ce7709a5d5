import { loadCase } from '~/app/case.server';
import { pageOf } from '~/app/paging';
import { readingsChoices, readingsView } from '~/app/readings/view.server';
import { readActor } from '~/app/who.server';
import { chosenOf } from './chosen';
import { PART_FORMS } from './forms';
import { subjectPart } from './part.server';
import { subjectRows } from './rows.server';

type Screen = {
  readonly kind: 'rail' | 'turnout';
  readonly columns: readonly { readonly id: string }[];
  /** Fields that the name of one says already. */
  readonly named: readonly string[];
  /** Group of what was looked for on this screen. */
  readonly looked: string;
};

/** What a screen of one kind of thing shows: the list of them, the one the address names, and what was looked for. */
export async function subjectScreen(
  request: Request,
  params: Parameters<typeof loadCase>[0],
  { kind, columns, named, looked }: Screen,
) {
  const loaded = loadCase(params);
  const { record, caseId } = loaded;
  const actor = await readActor(request, record);
  const asked = new URL(request.url).searchParams;
  const chosen = chosenOf(record.entities[kind], asked.get(kind));
  const wanted = { forms: PART_FORMS[kind], group: asked.get('group'), named };
  return {
    loaded,
    asked,
    view: {
      caseId,
      page: pageOf(subjectRows(loaded, kind, columns), asked.get('page')),
      part: chosen && subjectPart(loaded, kind, chosen, wanted, actor),
      choices: readingsChoices(loaded),
      looked: readingsView(loaded, { kind: 'case', id: caseId }, [looked], actor),
    },
  };
}
