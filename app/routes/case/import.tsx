import { json, redirect, type ActionFunctionArgs, type LoaderFunctionArgs } from '@remix-run/node';
import { Form, Link, useActionData, useLoaderData } from '@remix-run/react';
import { loadCase, notFound, type LoadedCase } from '~/app/case.server';
import { ChooseFile } from '~/app/components/imports/ChooseFile';
import { ImportPreview } from '~/app/components/imports/ImportPreview';
import { MatchColumns } from '~/app/components/imports/MatchColumns';
import { Page } from '~/app/components/Page';
import { Sheet } from '~/app/components/Sheet';
import { ABOUT_BOXES, readAbout, type About } from '~/app/imports/about';
import { aboutErrors } from '~/app/imports/about.server';
import { confirmImport } from '~/app/imports/commit.server';
import { importedParam } from '~/app/imports/imported';
import { IMPORTS, isImportKind } from '~/app/imports/kind';
import { importTargets, mappingFor, matchingView, readMatching } from '~/app/imports/matching.server';
import { previewImport, previewView } from '~/app/imports/preview.server';
import { storedSheet } from '~/app/imports/sheet.server';
import { LARGEST_BYTES, takePasted, takeTable, type UploadedFile } from '~/app/imports/upload.server';
import { sizeText } from '~/app/photos/size-text';
import { readingsChoices } from '~/app/readings/view.server';
import { readActor } from '~/app/who.server';
import {
  dropStagedImport,
  readStagedImport,
  setStagedMapping,
  stageImport,
  type ImportKind,
  type StagedImport,
} from '~/db/imports';
import { standing } from '~/lib/case/current';
import { mappingProblems } from '~/lib/case/imports/mapping';
import { nameOfEntity } from '~/lib/case/name-of';

type Params = LoaderFunctionArgs['params'];

const GONE = 'That file was already imported or dropped. Look at the list, or choose it again.';

function kindIn(params: Params): ImportKind {
  if (!isImportKind(params.importKind)) throw notFound('There is no such import.');
  return params.importKind;
}

function stagedIn(
  { db, caseId }: LoadedCase,
  kind: ImportKind,
  search: URLSearchParams,
): StagedImport | null {
  const id = search.get('staged');
  const staged = id ? readStagedImport(db, caseId, id) : null;
  return staged?.kind === kind ? { ...staged, kind } : null;
}

/** Address of a step, with everything that was chosen for the whole file. */
function stepHref(caseId: string, kind: ImportKind, staged: string, about: About, preview: boolean): string {
  const search = new URLSearchParams({ staged });
  for (const box of ABOUT_BOXES) search.set(box, about[box]);
  if (preview) search.set('step', '3');
  return `/cases/${caseId}/import/${kind}?${search}`;
}

export async function loader({ request, params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  const { caseId, record } = loaded;
  const kind = kindIn(params);
  const search = new URL(request.url).searchParams;
  const first = { caseId, kind, largest: sizeText(LARGEST_BYTES), error: null, file: null };
  if (!search.has('staged')) return json({ ...first, step: 1 as const });

  const staged = stagedIn(loaded, kind, search);
  if (!staged) return json({ ...first, step: 1 as const, error: GONE });
  const sheet = storedSheet(staged.sha256);
  if (!sheet.ok) return json({ ...first, step: 1 as const, error: sheet.message });

  const actor = await readActor(request, record);
  const asked = readAbout(search);
  const about = search.has('person') ? asked : { ...asked, person: actor.personId ?? '' };
  const mapping = mappingFor(loaded, staged, sheet.value);
  const file = { name: staged.fileName, sha256: staged.sha256, rows: sheet.value.rows.length };
  const usable = mappingProblems(mapping, importTargets(kind)).length === 0;
  const preview =
    usable && search.get('step') === '3' ? previewImport(kind, sheet.value, mapping, about, loaded) : null;
  if (preview?.ok) {
    return json({
      ...first,
      step: 3 as const,
      file,
      preview: previewView(kind, sheet.value, mapping, preview.value),
      backHref: stepHref(caseId, kind, staged.id, about, false),
    });
  }
  return json({
    ...first,
    step: 2 as const,
    file,
    matching: matchingView(kind, sheet.value, mapping),
    about,
    choices: readingsChoices(loaded),
    vehicles:
      kind === 'recorder'
        ? standing(record, 'vehicle').map((vehicle) => ({
            id: vehicle.id,
            label: nameOfEntity(record, 'vehicle', vehicle),
          }))
        : [],
  });
}

type Refused = {
  readonly error: string | null;
  readonly problems: readonly string[];
  readonly errors: Readonly<Record<string, string>>;
  readonly about: About | null;
  /** What was pasted, kept so that it can be put right, and what is wrong with it. */
  readonly pasted: string;
  readonly pasteError: string | null;
};

const refused = (given: Partial<Refused>) =>
  json<Refused>(
    { error: null, problems: [], errors: {}, about: null, pasted: '', pasteError: null, ...given },
    { status: 422 },
  );

function stage(file: UploadedFile, { db, caseId }: LoadedCase, kind: ImportKind) {
  const staged = stageImport(db, caseId, { kind, ...file });
  return redirect(`/cases/${caseId}/import/${kind}?staged=${staged}`);
}

async function upload(request: Request, loaded: LoadedCase, kind: ImportKind) {
  const taken = await takeTable(request);
  return taken.ok ? stage(taken.value, loaded, kind) : refused({ error: taken.message });
}

async function paste(pasted: string, loaded: LoadedCase, kind: ImportKind) {
  const taken = await takePasted(pasted);
  return taken.ok ? stage(taken.value, loaded, kind) : refused({ pasteError: taken.message, pasted });
}

export async function action({ request, params }: ActionFunctionArgs) {
  const loaded = loadCase(params);
  const { db, caseId, record } = loaded;
  const kind = kindIn(params);
  if (request.headers.get('content-type')?.startsWith('multipart/')) return upload(request, loaded, kind);

  const search = new URL(request.url).searchParams;
  const form = await request.formData();
  const intent = form.get('intent');
  if (intent === 'paste') return paste(String(form.get('pasted') ?? ''), loaded, kind);
  const staged = stagedIn(loaded, kind, search);
  if (!staged) return refused({ error: GONE });
  const { back } = IMPORTS[kind];
  if (intent === 'drop') {
    dropStagedImport(db, caseId, staged.id);
    return redirect(`/cases/${caseId}/${back}`);
  }
  const sheet = storedSheet(staged.sha256);
  if (!sheet.ok) return refused({ error: sheet.message });
  if (intent === 'match') {
    const { mapping, problems } = readMatching(form, kind, sheet.value, loaded);
    const about = readAbout(form);
    const errors = aboutErrors(about, loaded);
    setStagedMapping(db, caseId, staged.id, mapping);
    if (problems.length > 0 || Object.keys(errors).length > 0) return refused({ problems, errors, about });
    return redirect(stepHref(caseId, kind, staged.id, about, true));
  }
  const about = readAbout(search);
  const preview = previewImport(kind, sheet.value, mappingFor(loaded, staged, sheet.value), about, loaded);
  if (!preview.ok) return refused({ error: preview.message });
  const imported = confirmImport(preview.value, staged, about, loaded, await readActor(request, record));
  if (!imported.ok) return refused({ error: imported.message });
  return redirect(`/cases/${caseId}/${back}?imported=${importedParam({ kind, ...imported.value })}`);
}

const STEPS = { 1: 'Choose the file', 2: 'Match the columns', 3: 'Look at it and confirm' } as const;

export default function Import() {
  const data = useLoaderData<typeof loader>();
  const answer = useActionData<typeof action>();
  const { title, intro, back, sample } = IMPORTS[data.kind];
  return (
    <Page
      title={title}
      intro={intro}
      actions={<Link to={`/cases/${data.caseId}/${back}`}>Back to {back}</Link>}
    >
      <Sheet
        title={`Step ${data.step} of 3: ${STEPS[data.step].toLowerCase()}`}
        aside={
          data.file && (
            <Form method="post">
              <input type="hidden" name="intent" value="drop" />
              <button className="button button--small">Drop this file</button>
            </Form>
          )
        }
      >
        {data.file && (
          <p className="soft">
            {data.file.name}, {data.file.rows} {data.file.rows === 1 ? 'row' : 'rows'} below the header ·
            SHA-256 <span className="hash">{data.file.sha256}</span>
          </p>
        )}
        {data.step === 1 && (
          <ChooseFile
            error={answer?.error ?? data.error ?? undefined}
            largest={data.largest}
            sample={sample}
            paste={
              data.kind === 'recorder'
                ? null
                : { text: answer?.pasted ?? '', error: answer?.pasteError ?? undefined }
            }
          />
        )}
        {data.step === 2 && (
          <MatchColumns
            view={data.matching}
            problems={[...(answer?.error ? [answer.error] : []), ...(answer?.problems ?? [])]}
            about={{
              kind: data.kind,
              about: answer?.about ?? data.about,
              errors: answer?.errors ?? {},
              choices: data.choices,
              vehicles: data.vehicles,
            }}
          />
        )}
        {data.step === 3 && (
          <ImportPreview view={data.preview} refused={answer?.error ?? undefined} backHref={data.backHref} />
        )}
      </Sheet>
    </Page>
  );
}
