import { json, redirect, type ActionFunctionArgs, type LoaderFunctionArgs } from '@remix-run/node';
import { Form, Link, useActionData, useLoaderData } from '@remix-run/react';
import { loadCase, type LoadedCase } from '~/app/case.server';
import { LabelledInput } from '~/app/components/LabelledInput';
import { Message } from '~/app/components/Message';
import { Page } from '~/app/components/Page';
import { Sheet } from '~/app/components/Sheet';
import { ChooseOutlineFile } from '~/app/components/traces/ChooseOutlineFile';
import { Draft } from '~/app/components/traces/Draft';
import { FileChoiceFields } from '~/app/components/traces/FileChoiceFields';
import { useRedraw } from '~/app/components/traces/use-redraw';
import { systemOf } from '~/app/readings/take.server';
import { readFileChoice } from '~/app/traces/file';
import { fileView, storedOutlineFile, takeOutlineFile } from '~/app/traces/file.server';
import { pairsOf } from '~/app/traces/keep.server';
import { draftView } from '~/app/traces/picture.server';
import { readActor } from '~/app/who.server';
import { readStagedImport, stageImport, StagedImportGone } from '~/db/imports';
import { addOwnShape } from '~/db/own-shapes';
import type { StandardShape } from '~/lib/case/trace';
import { ownShapeOutline } from '~/lib/shapes/own-shape';
import { outlineFromFile } from '~/lib/tracing/outline-file';

const GONE = 'That file was already kept or dropped. Look at the list of shapes, or choose it again.';

const shapeIn = (search: URLSearchParams): StandardShape =>
  search.get('shape') === 'rail' ? 'rail' : 'wheel';

function stagedIn({ db, caseId }: LoadedCase, search: URLSearchParams) {
  const id = search.get('staged');
  const staged = id ? readStagedImport(db, caseId, id) : null;
  return staged?.kind === 'ownShape' ? staged : null;
}

type Source = { readonly get: (name: string) => unknown };
const wordsOf = (sent: Source) => ({
  name: String(sent.get('name') ?? '').slice(0, 80),
  source: String(sent.get('source') ?? '').slice(0, 400),
});

export function loader({ request, params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  const { record, caseId } = loaded;
  const search = new URL(request.url).searchParams;
  const shape = shapeIn(search);
  const first = { caseId, shape, error: null, check: null };
  if (!search.has('staged')) return json(first);
  const staged = stagedIn(loaded, search);
  if (!staged) return json({ ...first, error: GONE });
  const file = storedOutlineFile(staged.sha256, shape);
  if (!file.ok) return json({ ...first, error: file.message });
  const choice = readFileChoice(search, file.value);
  const outline = outlineFromFile(file.value, choice);
  return json({
    ...first,
    check: {
      staged: staged.id,
      fileName: staged.fileName,
      sha256: staged.sha256,
      view: fileView(file.value, choice),
      draft: draftView(outline, shape, systemOf(record.fields)),
      words: wordsOf(search),
    },
  });
}

const refused = (error: string | null, errors: Readonly<Record<string, string>> = {}) =>
  json({ error, errors }, { status: 422 });

export async function action({ request, params }: ActionFunctionArgs) {
  const loaded = loadCase(params);
  const { db, caseId, record } = loaded;
  const search = new URL(request.url).searchParams;
  const shape = shapeIn(search);
  if (request.headers.get('content-type')?.startsWith('multipart/')) {
    const taken = await takeOutlineFile(request, shape);
    if (!taken.ok) return refused(taken.message);
    const staged = stageImport(db, caseId, { kind: 'ownShape', ...taken.value });
    return redirect(`/cases/${caseId}/traces/shapes/new?shape=${shape}&staged=${staged}`);
  }
  const staged = stagedIn(loaded, search);
  if (!staged) return refused(GONE);
  const form = await request.formData();
  const file = storedOutlineFile(staged.sha256, shape);
  if (!file.ok) return refused(file.message);
  const line = outlineFromFile(file.value, readFileChoice(form, file.value));
  const placed = line.ok ? ownShapeOutline(shape, pairsOf(line.value)) : line;
  if (!placed.ok) return refused(placed.message);
  const { name, source } = wordsOf(form);
  const errors = {
    ...(name.trim() === '' ? { name: 'Give it a name.' } : {}),
    ...(source.trim() === '' ? { source: 'Say where it comes from, such as a drawing and its date.' } : {}),
  };
  if (Object.keys(errors).length > 0) return refused(null, errors);
  const given = {
    shape,
    name: name.trim(),
    source: source.trim(),
    sha256: staged.sha256,
    fileName: staged.fileName,
    pointsMm: pairsOf(placed.value),
    stagedImportId: staged.id,
  };
  try {
    addOwnShape(db, caseId, given, await readActor(request, record));
  } catch (error) {
    if (error instanceof StagedImportGone) return refused(error.message);
    throw error;
  }
  return redirect(`/cases/${caseId}/traces/shapes`);
}

export default function NewShape() {
  const { caseId, shape, error, check } = useLoaderData<typeof loader>();
  const answer = useActionData<typeof action>();
  const redraw = useRedraw();
  const errors: Readonly<Record<string, string>> = answer?.errors ?? {};
  return (
    <Page
      title={shape === 'wheel' ? 'A wheel shape of your own' : 'A rail shape of your own'}
      intro="From a file of points of the new shape. It is placed by its own edges; traces can then be laid over it."
      actions={<Link to={`/cases/${caseId}/traces/shapes`}>Back to the shapes</Link>}
    >
      {check === null ? (
        <Sheet title="Step 1 of 2: choose the file">
          <ChooseOutlineFile error={answer?.error ?? error ?? undefined} />
        </Sheet>
      ) : (
        <Sheet title="Step 2 of 2: look at it and keep it">
          <p className="soft">
            {check.fileName} · SHA-256 <span className="hash">{check.sha256}</span>
          </p>
          {answer?.error && <Message tone="bad">{answer.error}</Message>}
          <Form method="post" className="form" {...redraw} noValidate>
            <input type="hidden" name="shape" value={shape} />
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
            <div className="shared form__grid">
              <LabelledInput
                id="shape-name"
                name="name"
                label="Name of the shape"
                value={check.words.name}
                error={errors.name}
                maxLength={80}
              />
              <LabelledInput
                id="shape-source"
                name="source"
                label="Where it comes from"
                help="Drawing or standard, its number and date."
                value={check.words.source}
                error={errors.source}
              />
            </div>
            <div>
              <button className="button button--main">Keep this shape</button>
            </div>
          </Form>
        </Sheet>
      )}
    </Page>
  );
}
