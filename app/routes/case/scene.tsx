import { json, redirect, type ActionFunctionArgs, type LoaderFunctionArgs } from '@remix-run/node';
import { Link, useActionData, useLoaderData } from '@remix-run/react';
import { loadCase } from '~/app/case.server';
import { EntityForm } from '~/app/components/EntityForm';
import { EntityTable, type TableColumn } from '~/app/components/EntityTable';
import { Page } from '~/app/components/Page';
import { ReadingsForm } from '~/app/components/readings/ReadingsForm';
import { Sheet } from '~/app/components/Sheet';
import { valuesOf } from '~/app/entities/form-values';
import { readRecord } from '~/app/entities/save.server';
import { tableRows } from '~/app/entities/table-rows';
import { answerReadings } from '~/app/readings/answer.server';
import { readingsChoices, readingsView } from '~/app/readings/view.server';
import { readActor } from '~/app/who.server';
import { updateCase } from '~/db/cases';
import { caseKind, KINDS } from '~/lib/case/kinds';
import type { EntityKind } from '~/lib/case/record';
import { groupsFor } from '~/lib/readings/quantities';

const LISTED: readonly {
  readonly kind: EntityKind;
  readonly columns: readonly TableColumn[];
  readonly empty: string;
}[] = [
  {
    kind: 'person',
    columns: [
      { id: 'role', label: 'Role' },
      { id: 'organisation', label: 'Organisation' },
    ],
    empty: 'Nobody yet. Add yourself first, then choose your name under “Entering as”.',
  },
  {
    kind: 'instrument',
    columns: [
      { id: 'kind', label: 'Kind' },
      { id: 'resolution', label: 'Smallest division' },
      { id: 'calibratedOn', label: 'Last calibrated' },
    ],
    empty: 'None yet. A reading without one is taken with the ordinary instrument for it.',
  },
  {
    kind: 'statement',
    columns: [
      { id: 'person', label: 'Who' },
      { id: 'takenAt', label: 'When' },
    ],
    empty: 'None yet.',
  },
];

export async function loader({ request, params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  const { record, caseId } = loaded;
  const actor = await readActor(request, record);
  const groups = groupsFor('scene', 'case').map(({ id }) => id);
  return json({
    caseId,
    values: valuesOf(caseKind, record.fields),
    lists: LISTED.map(({ kind, columns }) => tableRows(loaded, kind, columns, { back: 'scene' })),
    choices: readingsChoices(loaded),
    readings: readingsView(loaded, { kind: 'case', id: caseId }, groups, actor),
  });
}

export async function action({ request, params }: ActionFunctionArgs) {
  const loaded = loadCase(params);
  const { db, caseId, record } = loaded;
  const form = await request.formData();
  const actor = await readActor(request, record);
  const readings = answerReadings(request, form, loaded, actor);
  if (readings) return json({ readings, sent: null }, { status: readings.status });
  const sent = readRecord(form, caseKind, null);
  if (!sent.ok) return json({ readings: null, sent }, { status: 422 });
  updateCase(db, caseId, sent.fields, actor);
  return redirect(`/cases/${caseId}/scene`);
}

export default function Scene() {
  const { caseId, values, lists, choices, readings } = useLoaderData<typeof loader>();
  const answer = useActionData<typeof action>();
  return (
    <Page title="Scene" intro="Where and when, who was there, what was read on arrival and who said what.">
      <Sheet title="The occurrence">
        <EntityForm
          kind={caseKind}
          values={answer?.sent?.values ?? values}
          errors={answer?.sent?.errors}
          intent="case"
          submit="Save the occurrence"
        />
      </Sheet>
      {LISTED.map(({ kind, columns, empty }, index) => (
        <Sheet
          key={kind}
          title={KINDS[kind].plural}
          id={kind}
          aside={
            <Link to={`/cases/${caseId}/records/${kind}/new`} className="button button--small">
              Add
            </Link>
          }
        >
          <EntityTable
            caption={KINDS[kind].plural}
            nameLabel={KINDS[kind].name}
            columns={columns}
            rows={lists[index] ?? []}
            empty={empty}
          />
        </Sheet>
      ))}
      <Sheet title="Readings at the scene" id="readings">
        <ReadingsForm view={readings} choices={choices} answer={answer?.readings?.answer} />
      </Sheet>
    </Page>
  );
}
