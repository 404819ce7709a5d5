import { json, type ActionFunctionArgs, type LoaderFunctionArgs } from '@remix-run/node';
import { Link, useActionData, useLoaderData } from '@remix-run/react';
import { loadCase } from '~/app/case.server';
import type { TableColumn } from '~/app/components/EntityTable';
import { Page } from '~/app/components/Page';
import { ReadingsForm } from '~/app/components/readings/ReadingsForm';
import { Sheet } from '~/app/components/Sheet';
import { SubjectSheets } from '~/app/components/subjects/SubjectSheets';
import { SubjectTable } from '~/app/components/subjects/SubjectTable';
import { pageOf } from '~/app/paging';
import { answerReadings } from '~/app/readings/answer.server';
import { readingsChoices, readingsView } from '~/app/readings/view.server';
import { chosenOf } from '~/app/subjects/chosen';
import { PART_FORMS } from '~/app/subjects/forms';
import { subjectPart } from '~/app/subjects/part.server';
import { subjectRows } from '~/app/subjects/rows.server';
import { readActor } from '~/app/who.server';

const COLUMNS: readonly TableColumn[] = [
  { id: 'movement', label: 'Movement' },
  { id: 'lined', label: 'Lined for' },
  { id: 'hand', label: 'Hand' },
  { id: 'state', label: 'State when read' },
  { id: 'readings', label: 'Readings', number: true },
];

export async function loader({ request, params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  const { record, caseId } = loaded;
  const actor = await readActor(request, record);
  const asked = new URL(request.url).searchParams;
  const chosen = chosenOf(record.entities.turnout, asked.get('turnout'));
  const wanted = { forms: PART_FORMS.turnout, group: asked.get('group'), named: ['name'] };
  return json({
    caseId,
    page: pageOf(subjectRows(loaded, 'turnout', COLUMNS), asked.get('page')),
    part: chosen && subjectPart(loaded, 'turnout', chosen, wanted, actor),
    choices: readingsChoices(loaded),
    looked: readingsView(loaded, { kind: 'case', id: caseId }, ['turnoutObservations'], actor),
  });
}

export async function action({ request, params }: ActionFunctionArgs) {
  const loaded = loadCase(params);
  const form = await request.formData();
  const answered = answerReadings(request, form, loaded, await readActor(request, loaded.record));
  return json({ answer: answered?.answer }, { status: answered?.status ?? 400 });
}

export default function Turnout() {
  const { caseId, page, part, choices, looked } = useLoaderData<typeof loader>();
  const answer = useActionData<typeof action>()?.answer;
  return (
    <Page
      title="Turnout"
      intro="Position of both points, lock and rods before anyone throws the switch; then points, frog and guard rails."
      actions={
        <Link className="button" to={`/cases/${caseId}/records/turnout/new`}>
          Add a turnout
        </Link>
      }
    >
      <Sheet title="Turnouts" id="turnouts">
        <SubjectTable
          of={page}
          what="Turnouts"
          nameLabel="Turnout"
          columns={COLUMNS}
          chosen={part?.id}
          empty="No turnout is recorded. Nothing is missing if none lies within a few hundred feet of the POD; say so below by what was looked for. If one does, add it before anyone throws it."
        />
      </Sheet>
      {part && <SubjectSheets part={part} choices={choices} answer={answer} />}
      <Sheet title="Looked for" id="looked">
        <ReadingsForm view={looked} choices={choices} answer={answer} />
      </Sheet>
    </Page>
  );
}
