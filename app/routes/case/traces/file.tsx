import { json, redirect, type ActionFunctionArgs, type LoaderFunctionArgs } from '@remix-run/node';
import { Form, Link, useActionData, useLoaderData } from '@remix-run/react';
import { loadCase, type LoadedCase } from '~/app/case.server';
import { Page } from '~/app/components/Page';
import { Sheet } from '~/app/components/Sheet';
import { Message } from '~/app/components/Message';
import { ChooseOutlineFile } from '~/app/components/traces/ChooseOutlineFile';
import { Draft } from '~/app/components/traces/Draft';
import { FileChoiceFields } from '~/app/components/traces/FileChoiceFields';
import { SaidFields } from '~/app/components/traces/SaidFields';
import { useRedraw } from '~/app/components/traces/use-redraw';
import { readingsChoices } from '~/app/readings/view.server';
import { systemOf } from '~/app/readings/take.server';
import { aboutView, askedAbout } from '~/app/traces/asked.server';
import { aboutKey } from '~/app/traces/about';
import { fileView, storedOutlineFile, takeOutlineFile } from '~/app/traces/file.server';
import { readFileChoice } from '~/app/traces/file';
import { HELD_SQUARE } from '~/app/traces/how-to-trace';
import { keepTrace } from '~/app/traces/keep.server';
import { draftView } from '~/app/traces/picture.server';
import { firstBoxes, instrumentMm, readNewSaid, sentBoxes } from '~/app/traces/said.server';
import type { SaidBoxes } from '~/app/traces/said';
import { readActor } from '~/app/who.server';
import { dropStagedImport, readStagedImport, stageImport } from '~/db/imports';
import { outlineFromFile, uncertaintyOfFile } from '~/lib/tracing/outline-file';

const GONE = 'That file was already kept or dropped. Look at the list of outlines, or choose it again.';

function stagedIn({ db, caseId }: LoadedCase, search: URLSearchParams) {
  const id = search.get('staged');
  const staged = id ? readStagedImport(db, caseId, id) : null;
  return staged?.kind === 'trace' ? staged : null;
}

export async function loader({ request, params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  const { record } = loaded;
  const search = new URL(request.url).searchParams;
  const about = askedAbout(loaded, search);
  const first = { about: aboutView(loaded, about), error: null, check: null };
  if (!search.has('staged')) return json(first);
  const staged = stagedIn(loaded, search);
  if (!staged) return json({ ...first, error: GONE });
  const file = storedOutlineFile(staged.sha256, about.shape);
  if (!file.ok) return json({ ...first, error: file.message });
  const choice = readFileChoice(search, file.value);
  const actor = await readActor(request, record);
  return json({
    ...first,
    check: {
      staged: staged.id,
      file: { name: staged.fileName, sha256: staged.sha256, rows: file.value.rows.length },
      view: fileView(file.value, choice),
      draft: draftView(outlineFromFile(file.value, choice), about.shape, systemOf(record.fields)),
      boxes: search.has('chosen') ? sentBoxes(search) : firstBoxes(actor),
      choices: readingsChoices(loaded),
    },
  });
}

const refused = (
  error: string | null,
  errors: Readonly<Record<string, string>> = {},
  boxes: SaidBoxes | null = null,
) => json({ error, errors, boxes }, { status: 422 });

export async function action({ request, params }: ActionFunctionArgs) {
  const loaded = loadCase(params);
  const { db, caseId, record } = loaded;
  const search = new URL(request.url).searchParams;
  const about = askedAbout(loaded, search);
  if (request.headers.get('content-type')?.startsWith('multipart/')) {
    const taken = await takeOutlineFile(request, about.shape);
    if (!taken.ok) return refused(taken.message);
    const staged = stageImport(db, caseId, { kind: 'trace', ...taken.value });
    return redirect(`/cases/${caseId}/traces/file?about=${aboutKey(about)}&staged=${staged}`);
  }
  const staged = stagedIn(loaded, search);
  if (!staged) return refused(GONE);
  const form = await request.formData();
  if (form.get('intent') === 'drop') {
    dropStagedImport(db, caseId, staged.id);
    return redirect(aboutView(loaded, about).back);
  }
  const file = storedOutlineFile(staged.sha256, about.shape);
  if (!file.ok) return refused(file.message);
  const choice = readFileChoice(form, file.value);
  const outline = outlineFromFile(file.value, choice);
  const { said, errors } = readNewSaid(form, record, about.shape);
  const boxes = sentBoxes(form);
  if (!outline.ok) return refused(outline.message, errors, boxes);
  if (Object.keys(errors).length > 0) return refused(null, errors, boxes);
  const kept = keepTrace(
    loaded,
    about,
    {
      outline: outline.value,
      making: { by: 'file', ...choice },
      uncertainty: uncertaintyOfFile(file.value, choice.unit, instrumentMm(record, said.instrumentId)),
      sha256: staged.sha256,
      fileName: staged.fileName,
      stagedImportId: staged.id,
    },
    said,
    form,
    await readActor(request, record),
  );
  return kept.ok ? redirect(`/cases/${caseId}/traces/${kept.value}`) : refused(kept.message, errors, boxes);
}

export default function TraceFromFile() {
  const { about, error, check } = useLoaderData<typeof loader>();
  const answer = useActionData<typeof action>();
  const redraw = useRedraw();
  const errors: Readonly<Record<string, string>> = answer?.errors ?? {};
  return (
    <Page
      title="Outline from a file"
      intro={`${about.name}. Nothing is in the case until you keep it.`}
      actions={<Link to={about.back}>Back to what it is of</Link>}
    >
      {check === null ? (
        <Sheet title="Step 1 of 2: choose the file">
          <ChooseOutlineFile error={answer?.error ?? error ?? undefined} />
        </Sheet>
      ) : (
        <Sheet
          title="Step 2 of 2: look at it and keep it"
          aside={
            <Form method="post">
              <input type="hidden" name="intent" value="drop" />
              <button className="button button--small">Drop this file</button>
            </Form>
          }
        >
          <p className="soft">
            {check.file.name}, {check.file.rows} points · SHA-256{' '}
            <span className="hash">{check.file.sha256}</span>
          </p>
          {about.shape === 'point' && <p className="soft">{HELD_SQUARE}</p>}
          {answer?.error && <Message tone="bad">{answer.error}</Message>}
          {Object.keys(errors).length > 0 && (
            <Message tone="bad">
              Something below cannot be read; everything you entered is still there.
            </Message>
          )}
          <Form method="post" className="form" {...redraw} noValidate>
            <input type="hidden" name="about" value={about.key} />
            <input type="hidden" name="staged" value={check.staged} />
            <div className="beside beside--even">
              <div className="stack">
                <FileChoiceFields view={check.view} />
                <noscript>
                  <button className="button" formMethod="get">
                    Draw it again
                  </button>
                </noscript>
              </div>
              <Draft draft={check.draft} />
            </div>
            <SaidFields
              isNew
              shape={about.shape}
              choices={check.choices}
              values={answer?.boxes ?? check.boxes}
              errors={errors}
            />
            <div>
              <button className="button button--main">Keep this outline</button>
            </div>
          </Form>
        </Sheet>
      )}
    </Page>
  );
}
