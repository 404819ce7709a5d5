import { json, redirect, type ActionFunctionArgs, type LoaderFunctionArgs } from '@remix-run/node';
import { Form, Link, useActionData, useLoaderData } from '@remix-run/react';
import { useMemo } from 'react';
import { loadCase } from '~/app/case.server';
import { FindingList } from '~/app/components/findings/FindingList';
import { HowTo } from '~/app/components/HowTo';
import { Imported } from '~/app/components/imports/Imported';
import { Message } from '~/app/components/Message';
import { Page } from '~/app/components/Page';
import { Pager } from '~/app/components/Pager';
import { ReadingsForm } from '~/app/components/readings/ReadingsForm';
import { Sheet } from '~/app/components/Sheet';
import { ClassesMet } from '~/app/components/track/ClassesMet';
import { LayOutForm } from '~/app/components/track/LayOutForm';
import { SheetEntry } from '~/app/components/track/SheetEntry';
import { countsText } from '~/app/components/track/SheetOutcome';
import { TrackChart } from '~/app/components/track/TrackChart';
import { StationTable } from '~/app/components/track/StationTable';
import { importedIn } from '~/app/imports/imported';
import { pageOf, PAGE_SIZE } from '~/app/paging';
import { answerReadings, type AnsweredReadings } from '~/app/readings/answer.server';
import { systemOf } from '~/app/readings/take.server';
import { readingsChoices, readingsView } from '~/app/readings/view.server';
import { addStations, type LaidOutAnswer } from '~/app/track/add-stations.server';
import { classesView } from '~/app/track/classes.server';
import { chartView } from '~/app/track/chart.server';
import { STATION_GROUPS } from '~/app/track/columns';
import { trackFindingsView } from '~/app/track/findings.server';
import { USUAL_SPACING } from '~/app/track/lay-out';
import { packed, unpacked } from '~/app/track/packed-rows';
import { removedStations, sheetRows, type SheetRow } from '~/app/track/rows.server';
import { askedColumns, filledColumns, moreColumns, shownColumns } from '~/app/track/shown-columns';
import { saveSheet, type SheetAnswer } from '~/app/track/save-sheet.server';
import { sheetEntryView } from '~/app/track/view.server';
import { readActor } from '~/app/who.server';
import { readAgainstTravel } from '~/lib/case/facing';
import type { CaseRecord } from '~/lib/case/record';
import { GROUPS } from '~/lib/readings/quantities';

export { revalidateAfterForms as shouldRevalidate } from '~/app/revalidate';

/** "3.12.0" in the address: how many stations, readings and changes were kept. */
const countsIn = (text: string | null): readonly number[] =>
  (text ?? '').split('.').map((part) => Math.min(Number(part) || 0, 9999));

const CASE_GROUPS = [
  'sheetReading',
  'curveDesign',
  'curveElevation',
  'exceptedTrack',
  'trackObservations',
] as const;

/** Those that are asked of this case. */
const groupsAsked = ({ fields }: CaseRecord): readonly string[] =>
  CASE_GROUPS.filter((id) => {
    const only = GROUPS.find((group) => group.id === id)?.onlyWhere;
    return only === undefined || fields[only.field] === only.is;
  });

export async function loader({ request, params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  const { record, caseId, head } = loaded;
  const actor = await readActor(request, record);
  const asked = new URL(request.url).searchParams;
  const rows = sheetRows(loaded);
  const at = asked.get('at')?.trim() ?? '';
  const found = at === '' ? -1 : rows.findIndex(({ name }) => name === at);
  // A page is asked for by its number, or by a station on it.
  const byStation = found < 0 ? null : String(Math.floor(found / PAGE_SIZE) + 1);
  const page = pageOf(rows, asked.get('page') ?? byStation);
  const open = asked.get('edit') !== null || rows.length === 0;
  const of = asked.get('of')?.trim() ?? '';
  const ofStation = rows.find(({ name }) => name === of);
  const system = systemOf(record.fields);
  const columns = askedColumns(asked.getAll('columns'));
  const filled = open ? filledColumns(rows) : new Set<number>();
  return json({
    caseId,
    head,
    system,
    spacing: USUAL_SPACING[system],
    chart: chartView(loaded, asked),
    turnedRound: readAgainstTravel(record),
    page: { ...page, items: page.items.map(packed) },
    open,
    columns: {
      asked: columns,
      shown: open ? shownColumns(filled, columns) : [],
      more: open ? moreColumns(filled, columns) : [],
    },
    removed: removedStations(loaded),
    missingStation: at !== '' && found < 0 ? at : null,
    entry: sheetEntryView(loaded, actor, open),
    findings: trackFindingsView(loaded, ofStation?.id ?? null, asked.get('findings')),
    classes: classesView(loaded, asked.get('exceptions')),
    of: ofStation ? of : null,
    kept: countsIn(asked.get('done')),
    imported: importedIn(asked.get('imported'), 'stations'),
    choices: readingsChoices(loaded),
    readings: readingsView(loaded, { kind: 'case', id: caseId }, groupsAsked(record), actor),
  });
}

/** The same page again with the columns asked for, saying what was kept, and open at the first new station. */
function backAfter(
  request: Request,
  counts: readonly number[],
  station: string,
  columns: readonly string[] | null = null,
): Response {
  const url = new URL(request.url);
  url.searchParams.set('done', counts.join('.'));
  if (columns !== null) {
    url.searchParams.delete('columns');
    for (const column of columns) url.searchParams.append('columns', column);
  }
  if (station !== '') {
    url.searchParams.set('at', station);
    url.searchParams.delete('page');
  }
  return redirect(`${url.pathname}${url.search}#sheet`);
}

type Answer = {
  readonly readings: AnsweredReadings | null;
  readonly sheet: SheetAnswer | null;
  /** Rows with a marked cell, which may lie on another page. */
  readonly strays: readonly SheetRow[];
  readonly laidOut: LaidOutAnswer | null;
};

const answerWith = (given: Partial<Answer>, status: number) =>
  json<Answer>({ readings: null, sheet: null, strays: [], laidOut: null, ...given }, { status });

export async function action({ request, params }: ActionFunctionArgs) {
  const loaded = loadCase(params);
  const form = await request.formData();
  const actor = await readActor(request, loaded.record);
  if (form.get('intent') === 'layOut') {
    const laid = addStations(form, loaded, actor);
    if (laid.ok)
      return backAfter(request, [laid.value.length, laid.value.length, 0], laid.value[0]?.name ?? '');
    const values = Object.fromEntries([...form].map(([name, value]) => [name, String(value)]));
    return answerWith({ laidOut: { message: laid.message, values } }, 422);
  }
  if (form.get('intent') === 'sheet') {
    const sheet = saveSheet(form, loaded, actor);
    const { stations, readings, changed } = sheet.counts;
    const refused = Object.keys(sheet.errors).length > 0;
    const onlyColumns = form.get('more') !== null;
    if (!refused && sheet.questions.length === 0 && (onlyColumns || stations + readings + changed > 0))
      return backAfter(request, [stations, readings, changed], sheet.firstAdded, sheet.columns);
    const strays = sheetRows(loadCase(params)).filter(({ id }) => sheet.marked.includes(id));
    // Pages are read anew after an answer of 200 alone, which shows what was kept beside what was not.
    return answerWith({ sheet, strays }, refused && stations + readings + changed === 0 ? 422 : 200);
  }
  const readings = answerReadings(request, form, loaded, actor);
  return answerWith({ readings }, readings?.status ?? 400);
}

export default function Track() {
  const data = useLoaderData<typeof loader>();
  const answer = useActionData<typeof action>();
  const { caseId, open, findings, system } = data;
  const page = useMemo(() => ({ ...data.page, items: data.page.items.map(unpacked) }), [data.page]);
  const here = `/cases/${caseId}/track`;
  const [stations = 0, readings = 0, changed = 0] = data.kept;
  const keptText = countsText({ stations, readings, changed });
  const sheet = answer?.sheet ?? undefined;
  const strays = answer?.strays.filter((row: SheetRow) => !page.items.some(({ id }) => id === row.id)) ?? [];
  return (
    <Page
      title="Track"
      intro="The track as it was read, station by station, and what follows from it."
      actions={
        <>
          <Link className="button" to={`/cases/${caseId}/import/stations`}>
            Import stations
          </Link>
          <Link className="button" to={`/cases/${caseId}/track/limits`}>
            The railroad’s own limits
          </Link>
        </>
      }
    >
      {data.chart && (
        <Sheet title="Track chart">
          {data.turnedRound && (
            <Message tone="care">
              The sheet was read facing against the direction of travel: positions, left and right are turned
              round in the chart and in what follows. The sheet shows them as entered.
            </Message>
          )}
          <TrackChart caseId={caseId} chart={data.chart} />
        </Sheet>
      )}
      <Sheet
        title="Station sheet"
        id="sheet"
        aside={
          page.total > 0 && (
            <Link
              className="button button--small"
              to={open ? `${here}?page=${page.page}#sheet` : `${here}?edit=1&page=${page.page}#sheet`}
            >
              {open ? 'Close the cells' : 'Enter and change readings'}
            </Link>
          )
        }
      >
        {data.imported && <Imported counts={data.imported} />}
        {!sheet && keptText && <Message tone="good">{keptText}.</Message>}
        {data.missingStation !== null && (
          <Message tone="care">There is no station “{data.missingStation}” in the sheet.</Message>
        )}
        {page.total > 0 && (
          <div className="row">
            <Form method="get" action={`${here}#sheet`} className="row">
              {open && <input type="hidden" name="edit" value="1" />}
              {data.columns.asked.map((id) => (
                <input key={id} type="hidden" name="columns" value={id} />
              ))}
              <label htmlFor="go-to">Go to station</label>
              <input id="go-to" name="at" type="text" className="short" autoComplete="off" />
              <button className="button button--small">Go</button>
            </Form>
            <Pager of={page} what="stations" />
          </div>
        )}
        <details className="disclose" open={page.total === 0}>
          <summary>How to take these readings</summary>
          <div className="stack">
            {STATION_GROUPS.map(({ id, name, howTo }) => (
              <div key={id}>
                <h3>{name}</h3>
                <HowTo howTo={howTo} />
              </div>
            ))}
          </div>
        </details>
        {open ? (
          <>
            <p className="soft small">
              Enter goes down, Tab to the right. A block copied from a spreadsheet can be pasted into any
              cell; rows are added as needed. A cell may carry its own unit. Cells that cannot be read are
              marked and the rest is kept.
            </p>
            <SheetEntry
              key={`${sheet?.stamp ?? data.head} ${page.page}`}
              rows={page.items}
              strays={strays}
              view={data.entry}
              system={system}
              answer={sheet}
              columns={data.columns}
              action={`${here}?edit=1&page=${page.page}${data.columns.asked.map((id) => `&columns=${id}`).join('')}`}
            />
          </>
        ) : (
          <StationTable
            caseId={caseId}
            rows={page.items}
            system={system}
            back={`${here}?page=${page.page}`}
          />
        )}
        {data.removed.length > 0 && (
          <details className="disclose">
            <summary>Removed stations ({data.removed.length})</summary>
            <ul className="plain-list">
              {data.removed.map(({ id, name, reason }) => (
                <li key={id}>
                  <a href={`/cases/${caseId}/records/station/${id}`}>{name}</a>: {reason}
                </li>
              ))}
            </ul>
          </details>
        )}
        <details className="disclose" open={page.total === 0 || Boolean(answer?.laidOut)}>
          <summary>Lay out many stations at once</summary>
          <LayOutForm
            spacing={data.spacing}
            person={data.entry.person}
            people={data.choices.people}
            refused={answer?.laidOut ?? undefined}
          />
        </details>
      </Sheet>
      {data.classes && (
        <Sheet title="Class of track met" id="classes">
          <ClassesMet {...data.classes} />
        </Sheet>
      )}
      <Sheet title="What follows" id="findings">
        <FindingList findings={findings.whole} empty="Nothing yet: no station has been read." />
      </Sheet>
      {page.total > 0 && (
        <Sheet
          title={
            data.of === null ? 'Stations beyond a limit or close to it' : `Findings at station ${data.of}`
          }
          id="station-findings"
        >
          <Form method="get" action={`${here}#station-findings`} className="row">
            <label htmlFor="findings-of">All findings of station</label>
            <input id="findings-of" name="of" type="text" className="short" autoComplete="off" />
            <button className="button button--small">Show</button>
            {data.of !== null && <Link to={`${here}#station-findings`}>Those beyond a limit</Link>}
          </Form>
          <FindingList
            findings={findings.stations.items}
            empty={data.of === null ? 'No undisturbed station lies beyond a limit or close to one.' : 'None.'}
          />
          <Pager of={findings.stations} param="findings" what="findings" />
        </Sheet>
      )}
      <Sheet title="Records and observations" id="readings">
        <ReadingsForm view={data.readings} choices={data.choices} answer={answer?.readings?.answer} />
      </Sheet>
    </Page>
  );
}
