import { json, type LoaderFunctionArgs } from '@remix-run/node';
import { Link, useActionData, useLoaderData } from '@remix-run/react';
import type { TableColumn } from '~/app/components/EntityTable';
import { Page } from '~/app/components/Page';
import { Mechanics } from '~/app/components/rails/Mechanics';
import { ReadingsForm } from '~/app/components/readings/ReadingsForm';
import { Sheet } from '~/app/components/Sheet';
import { SubjectSheets } from '~/app/components/subjects/SubjectSheets';
import { SubjectTable } from '~/app/components/subjects/SubjectTable';
import { TraceSheet } from '~/app/components/traces/TraceSheet';
import { mechanicsView } from '~/app/rails/mechanics.server';
import { readingsAction } from '~/app/readings/action.server';
import { subjectScreen } from '~/app/subjects/screen.server';
import { traceList } from '~/app/traces/list.server';

const COLUMNS: readonly TableColumn[] = [
  { id: 'section', label: 'Section' },
  { id: 'rolled', label: 'Rolled' },
  { id: 'joint', label: 'Joint or weld near' },
  { id: 'state', label: 'State when read' },
  { id: 'readings', label: 'Readings', number: true },
];

export async function loader({ request, params }: LoaderFunctionArgs) {
  const { loaded, asked, view } = await subjectScreen(request, params, {
    kind: 'rail',
    columns: COLUMNS,
    named: ['rail', 'where'],
    looked: 'railObservations',
  });
  return json({
    ...view,
    outlines: view.part && (await traceList(loaded, view.part)),
    together: mechanicsView(loaded, asked.get('way')),
  });
}

export const action = readingsAction;

export default function Rails() {
  const { caseId, page, part, outlines, together, choices, looked } = useLoaderData<typeof loader>();
  const answer = useActionData<typeof action>()?.answer;
  return (
    <Page
      title="Rails"
      intro="Section, wear, friction and hold of the rails before the POD, both of them, and what a wheel can do on them."
      actions={
        <>
          <Link className="button" to={`/cases/${caseId}/contact`}>
            Wheel on rail
          </Link>
          <Link className="button" to={`/cases/${caseId}/records/rail/new`}>
            Add a rail
          </Link>
        </>
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
      {outlines && <TraceSheet list={outlines} />}
      <Mechanics {...together} />
      <Sheet title="Looked for" id="looked">
        <ReadingsForm view={looked} choices={choices} answer={answer} />
      </Sheet>
    </Page>
  );
}
