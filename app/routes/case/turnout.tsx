import { json, type LoaderFunctionArgs } from '@remix-run/node';
import { Link, useActionData, useLoaderData } from '@remix-run/react';
import type { TableColumn } from '~/app/components/EntityTable';
import { Page } from '~/app/components/Page';
import { ReadingsForm } from '~/app/components/readings/ReadingsForm';
import { Sheet } from '~/app/components/Sheet';
import { SubjectSheets } from '~/app/components/subjects/SubjectSheets';
import { SubjectTable } from '~/app/components/subjects/SubjectTable';
import { PointSheet } from '~/app/components/turnout/PointSheet';
import { pointView } from '~/app/turnout/point.server';
import { TraceSheet } from '~/app/components/traces/TraceSheet';
import { traceList } from '~/app/traces/list.server';
import { readingsAction } from '~/app/readings/action.server';
import { subjectScreen } from '~/app/subjects/screen.server';

const COLUMNS: readonly TableColumn[] = [
  { id: 'movement', label: 'Movement' },
  { id: 'lined', label: 'Lined for' },
  { id: 'hand', label: 'Hand' },
  { id: 'state', label: 'State when read' },
  { id: 'readings', label: 'Readings', number: true },
];

export async function loader({ request, params }: LoaderFunctionArgs) {
  const { loaded, view } = await subjectScreen(request, params, {
    kind: 'turnout',
    columns: COLUMNS,
    named: ['name'],
    looked: 'turnoutObservations',
  });
  return json({
    ...view,
    point: view.part && pointView(loaded, view.part.id),
    outlines: view.part && (await traceList(loaded, view.part)),
  });
}

export const action = readingsAction;

export default function Turnout() {
  const { caseId, page, part, point, outlines, choices, looked } = useLoaderData<typeof loader>();
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
      {point && <PointSheet {...point} />}
      {outlines && <TraceSheet list={outlines} />}
      <Sheet title="Looked for" id="looked">
        <ReadingsForm view={looked} choices={choices} answer={answer} />
      </Sheet>
    </Page>
  );
}
