import { json, type ActionFunctionArgs, type LoaderFunctionArgs } from '@remix-run/node';
import { Link, useActionData, useLoaderData } from '@remix-run/react';
import { loadCase } from '~/app/case.server';
import type { TableColumn } from '~/app/components/EntityTable';
import { Page } from '~/app/components/Page';
import { Mechanics } from '~/app/components/rails/Mechanics';
import { ReadingsForm } from '~/app/components/readings/ReadingsForm';
import { Sheet } from '~/app/components/Sheet';
import { SubjectSheets } from '~/app/components/subjects/SubjectSheets';
import { SubjectTable } from '~/app/components/subjects/SubjectTable';
import { pageOf } from '~/app/paging';
import { mechanicsView } from '~/app/rails/mechanics.server';
import { answerReadings } from '~/app/readings/answer.server';
import { readingsChoices, readingsView } from '~/app/readings/view.server';
import { chosenOf } from '~/app/subjects/chosen';
import { PART_FORMS } from '~/app/subjects/forms';
import { subjectPart } from '~/app/subjects/part.server';
import { subjectRows } from '~/app/subjects/rows.server';
import { readActor } from '~/app/who.server';

const COLUMNS: readonly TableColumn[] = [
  { id: 'section', label: 'Section' },
  { id: 'rolled', label: 'Rolled' },
  { id: 'joint', label: 'Joint or weld near' },
  { id: 'state', label: 'State when read' },
  { id: 'readings', label: 'Readings', number: true },
];

export async function loader({ request, params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  const { record, caseId } = loaded;
  const actor = await readActor(request, record);
  const asked = new URL(request.url).searchParams;
  const chosen = chosenOf(record.entities.rail, asked.get('rail'));
  const wanted = { forms: PART_FORMS.rail, group: asked.get('group'), named: ['rail', 'where'] };
  return json({
    caseId,
    page: pageOf(subjectRows(loaded, 'rail', COLUMNS), asked.get('page')),
    part: chosen && subjectPart(loaded, 'rail', chosen, wanted, actor),
    together: mechanicsView(loaded, asked.get('way')),
    choices: readingsChoices(loaded),
    looked: readingsView(loaded, { kind: 'case', id: caseId }, ['railObservations'], actor),
  });
}

export async function action({ request, params }: ActionFunctionArgs) {
  const loaded = loadCase(params);
  const form = await request.formData();
  const answered = answerReadings(request, form, loaded, await readActor(request, loaded.record));
  return json({ answer: answered?.answer }, { status: answered?.status ?? 400 });
}

export default function Rails() {
  const { caseId, page, part, together, choices, looked } = useLoaderData<typeof loader>();
  const answer = useActionData<typeof action>()?.answer;
  return (
    <Page
      title="Rails"
      intro="Section, wear, friction and hold of the rails before the POD, both of them, and what a wheel can do on them."
      actions={
        <Link className="button" to={`/cases/${caseId}/records/rail/new`}>
          Add a rail
        </Link>
      }
    >
      <Sheet title="Places read" id="rails">
        <SubjectTable
          of={page}
          what="Rails"
          nameLabel="Rail"
          columns={COLUMNS}
          chosen={part?.id}
          empty="None yet. Add the high rail and the low rail close before the POD, where the derailment has not touched them."
        />
      </Sheet>
      {part && <SubjectSheets part={part} choices={choices} answer={answer} />}
      <Mechanics {...together} />
      <Sheet title="Looked for" id="looked">
        <ReadingsForm view={looked} choices={choices} answer={answer} />
      </Sheet>
    </Page>
  );
}
