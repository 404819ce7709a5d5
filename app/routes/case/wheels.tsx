import { json, type LoaderFunctionArgs } from '@remix-run/node';
import { Link, useActionData, useLoaderData } from '@remix-run/react';
import { loadCase } from '~/app/case.server';
import { SvgView } from '~/app/components/FigureView';
import { FindingList } from '~/app/components/findings/FindingList';
import { Page } from '~/app/components/Page';
import { ReadingsForm } from '~/app/components/readings/ReadingsForm';
import { Sheet } from '~/app/components/Sheet';
import { SubjectSheets } from '~/app/components/subjects/SubjectSheets';
import { SubjectTable } from '~/app/components/subjects/SubjectTable';
import { TraceSheet } from '~/app/components/traces/TraceSheet';
import { WheelDefects } from '~/app/components/wheels/WheelDefects';
import { readingsAction } from '~/app/readings/action.server';
import { readingsChoices, readingsView } from '~/app/readings/view.server';
import { traceList } from '~/app/traces/list.server';
import { TRUCK_COLUMNS, WHEELSET_COLUMNS } from '~/app/wheels/columns';
import { wheelsView } from '~/app/wheels/view.server';
import { readActor } from '~/app/who.server';

export async function loader({ request, params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  const { caseId, record } = loaded;
  const actor = await readActor(request, record);
  const view = wheelsView(loaded, new URL(request.url).searchParams, actor);
  const wheelset = view.part?.kind === 'wheelset' ? view.part.id : null;
  return json({
    caseId,
    view,
    outlines: wheelset === null ? null : await traceList(loaded, { kind: 'wheelset', id: wheelset }),
    choices: readingsChoices(loaded),
    looked: readingsView(loaded, { kind: 'case', id: caseId }, ['wheelObservations'], actor),
  });
}

export const action = readingsAction;

export default function Wheels() {
  const { caseId, view, outlines, choices, looked } = useLoaderData<typeof loader>();
  const answer = useActionData<typeof action>()?.answer;
  const { part, wheelsets, trucks, defects, clock, wear, ofVehicle } = view;
  const add = (kind: string) => (
    <Link className="button button--small" to={`/cases/${caseId}/records/${kind}/new`}>
      Add
    </Link>
  );
  return (
    <Page
      title="Wheels"
      intro="Wheelsets and trucks of the first derailed equipment and of its neighbours; what came off first stands first."
      actions={
        <Link className="button" to={`/cases/${caseId}/contact`}>
          Wheel on rail
        </Link>
      }
    >
      <Sheet title="Wheelsets" id="wheelsets" aside={add('wheelset')}>
        <SubjectTable
          of={wheelsets}
          what="Wheelsets"
          nameLabel="Wheelset"
          columns={WHEELSET_COLUMNS}
          chosen={part?.id}
          empty="None yet. Start with the first derailed axle, then the others of its truck, then an axle that stayed on for comparison."
        />
      </Sheet>
      <Sheet title="Trucks" id="trucks" aside={add('truck')}>
        <SubjectTable
          of={trucks}
          what="Trucks"
          nameLabel="Truck"
          param="trucks"
          columns={TRUCK_COLUMNS}
          chosen={part?.id}
          empty="None yet. Add both trucks of the first derailed car."
        />
      </Sheet>
      {part && (
        <SubjectSheets
          part={part}
          choices={choices}
          answer={answer}
          figure={clock && <SvgView html={{ __html: clock }} />}
        />
      )}
      {outlines && <TraceSheet list={outlines} />}
      {wear.length > 0 && (
        <Sheet title="Wear over the distance run" id="wear">
          <div className="beside beside--even">
            {wear.map(({ id, svg }) => (
              <SvgView key={id} html={{ __html: svg }} />
            ))}
          </div>
        </Sheet>
      )}
      {part?.kind === 'wheelset' && (
        <WheelDefects wheelset={part} caseId={caseId} defects={defects} choices={choices} answer={answer} />
      )}
      {ofVehicle.length > 0 && (
        <Sheet title="Both trucks together">
          <FindingList findings={ofVehicle} empty="" />
        </Sheet>
      )}
      <Sheet title="Looked for" id="looked">
        <ReadingsForm view={looked} choices={choices} answer={answer} />
      </Sheet>
    </Page>
  );
}
