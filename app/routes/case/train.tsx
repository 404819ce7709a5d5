import { json, redirect, type ActionFunctionArgs, type LoaderFunctionArgs } from '@remix-run/node';
import { Link, useActionData, useLoaderData, useLocation } from '@remix-run/react';
import { loadCase, notFound } from '~/app/case.server';
import { FindingList } from '~/app/components/findings/FindingList';
import { FigureImage } from '~/app/components/FigureImage';
import { Imported } from '~/app/components/imports/Imported';
import { Page } from '~/app/components/Page';
import { ReasonForm } from '~/app/components/ReasonForm';
import { Pager } from '~/app/components/Pager';
import { ReadingsForm } from '~/app/components/readings/ReadingsForm';
import { Sheet } from '~/app/components/Sheet';
import { SubjectSheets } from '~/app/components/subjects/SubjectSheets';
import { LineTable } from '~/app/components/train/LineTable';
import { RecorderRunSheet } from '~/app/components/train/RecorderRunSheet';
import { VehicleTable } from '~/app/components/train/VehicleTable';
import { figureRef } from '~/app/figures/view.server';
import { caseFindings } from '~/app/findings/case-findings.server';
import { findingView } from '~/app/findings/view.server';
import { importedIn } from '~/app/imports/imported';
import { PAGE_SIZE, pageOf } from '~/app/paging';
import { answerReadings, type AnsweredReadings } from '~/app/readings/answer.server';
import { readingsChoices, readingsView } from '~/app/readings/view.server';
import { subjectPart } from '~/app/subjects/part.server';
import { lineRows } from '~/app/train/line.server';
import { vehicleRows } from '~/app/train/rows.server';
import { runViews, sampleBack } from '~/app/train/runs.server';
import { readActor } from '~/app/who.server';
import { standing } from '~/lib/case/current';
import { removeEntities } from '~/db/entities';
import { removeRecorderRun, restoreRecorderRun } from '~/db/recorder';

const VEHICLE = {
  forms: [
    { group: 'vehicleSize', findings: ['wheelLoad'] },
    { group: 'ladingPlace', findings: [] },
    { group: 'vehicleTrack', findings: [] },
    { group: 'locomotiveRating', findings: [] },
  ],
  named: ['position', 'mark', 'number'],
} as const;

const LINE = { forms: [{ group: 'lineProfile', findings: [] }], named: ['name'] } as const;

function backAnswer(loaded: ReturnType<typeof loadCase>, search: URLSearchParams) {
  const run = search.get('run');
  const distance = search.get('back')?.trim() ?? '';
  if (!run || distance === '') return null;
  const found = sampleBack(loaded, run, distance);
  return {
    run,
    distance,
    sample: found.ok ? found.value : null,
    error: found.ok ? null : found.message,
  };
}

export async function loader({ request, params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  const { record, caseId } = loaded;
  const actor = await readActor(request, record);
  const asked = new URL(request.url).searchParams;
  const vehicle = record.entities.vehicle.find(({ id }) => id === asked.get('vehicle'));
  const rows = vehicleRows(loaded);
  const at = rows.findIndex(({ id }) => id === vehicle?.id);
  const lines = lineRows(loaded);
  const stretch = record.entities.lineStretch.find(({ id }) => id === asked.get('lineStretch'));
  const lineAt = lines.findIndex(({ id }) => id === stretch?.id);
  return json({
    caseId,
    metric: record.fields.units === 'metric',
    imported: importedIn(asked.get('imported'), 'consist', 'line', 'recorder'),
    figure: figureRef(loaded, 'consist'),
    profile: figureRef(loaded, 'train-profile'),
    page: pageOf(rows, asked.get('page') ?? String(Math.floor(Math.max(0, at) / PAGE_SIZE) + 1)),
    part: vehicle ? subjectPart(loaded, 'vehicle', vehicle, VEHICLE, actor) : null,
    line: pageOf(lines, asked.get('rows') ?? String(Math.floor(Math.max(0, lineAt) / PAGE_SIZE) + 1)),
    linePart: stretch ? subjectPart(loaded, 'lineStretch', stretch, LINE, actor) : null,
    runs: runViews(loaded),
    back: backAnswer(loaded, asked),
    findings: caseFindings(loaded)
      .filter(({ part, subject }) => part === 'train' && subject?.kind !== 'vehicle')
      .map((finding) => findingView(loaded, finding)),
    choices: readingsChoices(loaded),
    placing: readingsView(loaded, { kind: 'case', id: caseId }, ['podPlacing', 'trainTrack'], actor),
    looked: readingsView(loaded, { kind: 'case', id: caseId }, ['trainObservations'], actor),
  });
}

type Answer = {
  readonly readings: AnsweredReadings | null;
  readonly noReason: { readonly run: string; readonly message: string } | null;
  readonly lineReason: string | null;
};

export async function action({ request, params }: ActionFunctionArgs) {
  const loaded = loadCase(params);
  const { db, caseId, record } = loaded;
  const form = await request.formData();
  const actor = await readActor(request, record);
  const intent = form.get('intent');
  if (intent === 'removeRun' || intent === 'restoreRun') {
    const run = record.recorderRuns.find(({ id }) => id === form.get('run'));
    if (!run) throw notFound('There is no such recorder run in this case.');
    const reason = String(form.get('reason') ?? '').trim();
    if (intent === 'removeRun' && reason === '') {
      const message = 'Say why: a few words, such as “another train”.';
      return json<Answer>(
        { readings: null, noReason: { run: run.id, message }, lineReason: null },
        { status: 422 },
      );
    }
    if (intent === 'removeRun') removeRecorderRun(db, caseId, run.id, reason, actor);
    else restoreRecorderRun(db, caseId, run.id, actor);
    return redirect(`/cases/${caseId}/train#recorder`);
  }
  if (intent === 'removeLine') {
    const reason = String(form.get('reason') ?? '').trim();
    if (reason === '') {
      const lineReason = 'Say why: a few words, such as “counted from the wrong milepost”.';
      return json<Answer>({ readings: null, noReason: null, lineReason }, { status: 422 });
    }
    removeEntities(
      db,
      caseId,
      'lineStretch',
      standing(record, 'lineStretch').map(({ id }) => id),
      reason,
      actor,
    );
    return redirect(`/cases/${caseId}/train#line`);
  }
  const readings = answerReadings(request, form, loaded, actor);
  return json<Answer>({ readings, noReason: null, lineReason: null }, { status: readings?.status ?? 400 });
}

export default function Train() {
  const data = useLoaderData<typeof loader>();
  const answer = useActionData<typeof action>();
  const { search } = useLocation();
  const { caseId, page, part, line, linePart, runs, findings, choices } = data;
  const hrefOf =
    (kind: 'vehicle' | 'lineStretch') =>
    (id: string): string => {
      const params = new URLSearchParams(search);
      for (const shown of ['vehicle', 'lineStretch', 'imported', 'group']) params.delete(shown);
      params.set(kind, id);
      return `?${params}#chosen`;
    };
  return (
    <Page
      title="Train"
      intro="The train from the head end, what it weighed, and what its recorder says."
      actions={
        <>
          <Link className="button" to={`/cases/${caseId}/records/vehicle/new`}>
            Add a vehicle
          </Link>
          <Link className="button" to={`/cases/${caseId}/import/consist`}>
            Import a consist
          </Link>
          <Link className="button" to={`/cases/${caseId}/import/line`}>
            Import grades and curves
          </Link>
          <Link className="button" to={`/cases/${caseId}/import/recorder`}>
            Import a recorder
          </Link>
        </>
      }
    >
      {data.imported && <Imported counts={data.imported} />}
      <Sheet title="Consist" id="consist">
        {data.figure && <FigureImage figure={data.figure} />}
        {page.total === 0 ? (
          <p className="soft">
            No vehicle yet. Import the consist as a CSV file, or add the vehicles one by one from the head
            end.
          </p>
        ) : (
          <VehicleTable
            caseId={caseId}
            rows={page.items}
            open={part?.id ?? null}
            hrefOf={hrefOf('vehicle')}
          />
        )}
        <Pager of={page} what="vehicles" />
      </Sheet>
      {part && <SubjectSheets part={part} choices={choices} answer={answer?.readings?.answer} />}
      <Sheet title="Event recorder" id="recorder">
        {runs.length === 0 && (
          <p className="soft">
            No recorder file yet. Import the download as CSV; the file itself is kept with its SHA-256.
          </p>
        )}
        {runs.map((run) => (
          <RecorderRunSheet
            key={run.id}
            run={run}
            back={data.back?.run === run.id ? data.back : null}
            exampleDistance={data.metric ? '70 m' : '230 ft'}
            reasonError={answer?.noReason?.run === run.id ? answer.noReason.message : undefined}
          />
        ))}
      </Sheet>
      <Sheet title="POD in the recorder run, and the track under the train" id="placing">
        <ReadingsForm view={data.placing} choices={choices} answer={answer?.readings?.answer} />
      </Sheet>
      <Sheet
        title="Grades and curves of the line"
        id="line"
        aside={
          <Link
            className="button button--small"
            to={`/cases/${caseId}/records/lineStretch/new?back=${encodeURIComponent(`/cases/${caseId}/train#line`)}`}
          >
            Add a row
          </Link>
        }
      >
        <p className="soft">
          {line.total === 0
            ? 'Not entered. Import the track chart as rows of distance from the POD, or paste them: every vehicle then stands on its own grade and curve, and the simulation runs over the line before the POD.'
            : 'Every vehicle stands on these by the lengths of the train, the first derailed one with its leading end at the POD. What is entered for a vehicle itself goes before them; beyond their ends the grade at the POD is taken.'}
        </p>
        {line.total > 0 && (
          <LineTable
            caseId={caseId}
            rows={line.items}
            open={linePart?.id ?? null}
            hrefOf={hrefOf('lineStretch')}
          />
        )}
        <Pager of={line} param="rows" what="rows" />
        {line.items.some(({ removed }) => removed === null) && (
          <ReasonForm
            label="Remove all rows"
            intent="removeLine"
            explain="They leave the list and the findings, with the reason beside them, and stay in the log. Each can be put back."
            error={answer?.lineReason ?? undefined}
          />
        )}
      </Sheet>
      {linePart && <SubjectSheets part={linePart} choices={choices} answer={answer?.readings?.answer} />}
      {(findings.length > 0 || data.profile) && (
        <Sheet title="What follows" id="findings">
          {data.profile && <FigureImage figure={data.profile} />}
          {runs.length > 0 && (
            <p>
              <Link to={`/cases/${caseId}/train/forces`} className="action-link" prefetch="none">
                Coupler forces through the run, simulated
              </Link>
            </p>
          )}
          <FindingList findings={findings} empty="" />
        </Sheet>
      )}
      <Sheet title="Looked for" id="readings">
        <ReadingsForm view={data.looked} choices={choices} answer={answer?.readings?.answer} />
      </Sheet>
    </Page>
  );
}
