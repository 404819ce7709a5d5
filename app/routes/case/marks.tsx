import { json, type ActionFunctionArgs, type LoaderFunctionArgs } from '@remix-run/node';
import { Link, useActionData, useLoaderData } from '@remix-run/react';
import { loadCase } from '~/app/case.server';
import { EntityTable } from '~/app/components/EntityTable';
import { FigureImage } from '~/app/components/FigureImage';
import { Page } from '~/app/components/Page';
import { Pager } from '~/app/components/Pager';
import { ReadingsForm } from '~/app/components/readings/ReadingsForm';
import { Sheet } from '~/app/components/Sheet';
import { SubjectSheets } from '~/app/components/subjects/SubjectSheets';
import { figureRef } from '~/app/figures/view.server';
import { MARK_COLUMNS, MARK_READINGS } from '~/app/marks/columns';
import { podQuestions } from '~/app/marks/questions.server';
import { markRows } from '~/app/marks/rows.server';
import { pageOf } from '~/app/paging';
import { answerReadings } from '~/app/readings/answer.server';
import { readingsChoices, readingsView } from '~/app/readings/view.server';
import { chosenOf } from '~/app/subjects/chosen';
import { PART_FORMS } from '~/app/subjects/forms';
import { subjectPart } from '~/app/subjects/part.server';
import { readActor } from '~/app/who.server';

const NOT_READ: ReadonlySet<string> = new Set(MARK_READINGS);

export async function loader({ request, params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  const { record, caseId } = loaded;
  const actor = await readActor(request, record);
  const asked = new URL(request.url).searchParams;
  const rows = markRows(loaded);
  const first = rows.find(({ isPod, removed }) => isPod && !removed) ?? rows[0];
  const chosen = chosenOf(record.entities.mark, asked.get('mark') ?? first?.id ?? null);
  return json({
    caseId,
    strip: figureRef(loaded, 'marks'),
    questions: podQuestions(loaded),
    page: pageOf(rows, asked.get('page')),
    part:
      chosen &&
      subjectPart(loaded, 'mark', chosen, { forms: PART_FORMS.mark, named: ['description'] }, actor),
    choices: readingsChoices(loaded),
    looked: readingsView(loaded, { kind: 'case', id: caseId }, ['markObservations'], actor),
  });
}

export async function action({ request, params }: ActionFunctionArgs) {
  const loaded = loadCase(params);
  const form = await request.formData();
  const answered = answerReadings(request, form, loaded, await readActor(request, loaded.record));
  return json({ answer: answered?.answer }, { status: answered?.status ?? 400 });
}

export default function Marks() {
  const { caseId, strip, questions, page, part, choices, looked } = useLoaderData<typeof loader>();
  const answer = useActionData<typeof action>()?.answer;
  return (
    <Page
      title="Marks"
      intro="What the wheels left on rail, ties and fastenings, measured from the point of derailment (POD) in the direction of travel."
      actions={
        <Link className="button" to={`/cases/${caseId}/records/mark/new`}>
          Add a mark
        </Link>
      }
    >
      {questions.map(({ text, links }) => (
        <div key={text} className="note note--care">
          <p>{text}</p>
          <ul>
            {links.map(({ text: name, href }) => (
              <li key={href}>
                <Link to={href}>{name}</Link>
              </li>
            ))}
          </ul>
        </div>
      ))}
      {strip && (
        <Sheet title="Along the track">
          <FigureImage figure={strip} />
        </Sheet>
      )}
      <Sheet title="In the order a wheel met them" id="marks">
        <EntityTable
          caption="Marks along the track"
          nameLabel="Mark"
          columns={MARK_COLUMNS}
          rows={page.items.map((row) => ({
            ...row,
            name: row.isPod ? `${row.name} (POD)` : row.name,
            href: `${row.href}#chosen`,
            current: row.id === part?.id,
            cells: Object.fromEntries(
              Object.entries(row.texts).map(([id, text]) => [
                id,
                text || <span className="soft">{NOT_READ.has(id) ? 'not read' : 'not said'}</span>,
              ]),
            ),
          }))}
          empty="None yet. Walk back from the first derailed wheel to the first mark on either rail, and on past it; then add each mark as it lies along the track."
        />
        <Pager of={page} what="marks" />
      </Sheet>
      {part && <SubjectSheets part={part} choices={choices} answer={answer} />}
      <Sheet title="Looked for" id="looked">
        <ReadingsForm view={looked} choices={choices} answer={answer} />
      </Sheet>
    </Page>
  );
}
