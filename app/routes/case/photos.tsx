import { json, redirect, type ActionFunctionArgs, type LoaderFunctionArgs } from '@remix-run/node';
import { Link, useActionData, useLoaderData } from '@remix-run/react';
import { loadCase, notFound, type LoadedCase } from '~/app/case.server';
import { Page } from '~/app/components/Page';
import { Pager } from '~/app/components/Pager';
import { PhotoCard } from '~/app/components/photos/PhotoCard';
import { PhotoForm } from '~/app/components/photos/PhotoForm';
import { PhotoSheet } from '~/app/components/photos/PhotoSheet';
import { UploadForm } from '~/app/components/photos/UploadForm';
import { Sheet } from '~/app/components/Sheet';
import { pageOf } from '~/app/paging';
import {
  CAPTION_LENGTH,
  photoChoices,
  photoForm,
  readPhotoForm,
  sentPhotoForm,
} from '~/app/photos/edit.server';
import { LARGEST_BYTES, MOST_FILES } from '~/app/photos/limits.server';
import { subjectAt, subjectKey } from '~/app/photos/subject';
import { takeUpload } from '~/app/photos/upload.server';
import { photosInOrder, photoView } from '~/app/photos/view.server';
import { readActor } from '~/app/who.server';
import type { Actor } from '~/db/actor';
import { removePhoto, restorePhoto, updatePhoto } from '~/db/photos';
import { nameOf } from '~/lib/case/name-of';
import type { Photo } from '~/lib/case/record';

const ON_A_PAGE = 24;

/** The one photo the address names, with its neighbours in the list. */
function openPhoto(loaded: LoadedCase, all: readonly Photo[], id: string | null) {
  if (id === null) return null;
  const at = all.findIndex((photo) => photo.id === id);
  const photo = all[at];
  if (!photo) throw notFound('There is no such photo in this case. Open it from the list of photos.');
  const to = (other: Photo | undefined) => (other ? `?photo=${other.id}` : null);
  return {
    photo: photoView(loaded, photo),
    before: to(all[at - 1]),
    after: to(all[at + 1]),
    list: `?page=${Math.floor(at / ON_A_PAGE) + 1}`,
    form: photoForm(photo),
    choices: photoChoices(loaded, photo),
    captionLength: CAPTION_LENGTH,
  };
}

export function loader({ request, params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  const { searchParams } = new URL(request.url);
  const all = photosInOrder(loaded);
  const open = openPhoto(loaded, all, searchParams.get('photo'));
  const { items, ...paged } = pageOf(all, searchParams.get('page'), ON_A_PAGE);
  const about = subjectAt(loaded.record, searchParams.get('about') ?? '');
  // Turning a page is not adding them again.
  const added = searchParams.has('page') ? '' : (searchParams.get('added') ?? '');
  return json({
    open,
    photos: open ? [] : items.map((photo) => photoView(loaded, photo)),
    paged,
    removed: all.filter((photo) => photo.removed !== null).length,
    about: about && { key: subjectKey(about), text: nameOf(loaded.record, about) },
    saved: searchParams.has('saved'),
    added: /^\d{1,3}$/.test(added) ? Number(added) : 0,
    mostFiles: MOST_FILES,
    mostBytes: LARGEST_BYTES,
  });
}

const NOTHING_CHOSEN = 'No file was chosen. Choose one or more photos first.';

type Answer = {
  readonly upload?: { readonly kept: number; readonly refused: readonly string[] };
  readonly edit?: {
    readonly values: ReturnType<typeof sentPhotoForm>;
    readonly errors: Record<string, string>;
  };
  readonly reasonError?: string;
};

/** Pages are read anew after an answer of 200 alone, which shows what was kept. */
const answer = (value: Answer, status = 422) => json(value, { status });

async function upload(request: Request, loaded: LoadedCase, actor: Actor) {
  const { kept, refused } = await takeUpload(request, loaded, actor);
  if (kept > 0 && refused.length === 0) {
    const back = new URL(request.url);
    back.searchParams.set('added', String(kept));
    return redirect(back.pathname + back.search);
  }
  return answer(
    { upload: { kept, refused: refused.length > 0 ? refused : [NOTHING_CHOSEN] } },
    kept > 0 ? 200 : 422,
  );
}

function change(
  form: FormData,
  { db, caseId, record }: LoadedCase,
  photo: Photo,
  actor: Actor,
  here: string,
) {
  switch (form.get('intent')) {
    case 'restore':
      restorePhoto(db, caseId, photo.id, actor);
      return redirect(here);
    case 'remove': {
      const reason = String(form.get('reason') ?? '').trim();
      if (reason === '')
        return answer({ reasonError: 'Say why: a few words, such as “shows another train”.' });
      removePhoto(db, caseId, photo.id, reason, actor);
      return redirect(here);
    }
    default: {
      const values = sentPhotoForm(form);
      const read = readPhotoForm(values, record, photo);
      if (!read.ok) return answer({ edit: { values, errors: read.errors } });
      updatePhoto(db, caseId, photo.id, read.change, actor);
      return redirect(`${here}&saved=1`);
    }
  }
}

export async function action({ request, params }: ActionFunctionArgs) {
  const loaded = loadCase(params);
  const actor = await readActor(request, loaded.record);
  if (request.headers.get('content-type')?.startsWith('multipart/form-data')) {
    return upload(request, loaded, actor);
  }
  const id = new URL(request.url).searchParams.get('photo');
  const photo = loaded.record.photos.find((each) => each.id === id);
  if (!photo) throw notFound('There is no such photo in this case. Open it from the list of photos.');
  return change(
    await request.formData(),
    loaded,
    photo,
    actor,
    `/cases/${loaded.caseId}/photos?photo=${photo.id}`,
  );
}

export default function Photos() {
  const { open, saved, photos, paged, removed, about, added, mostFiles, mostBytes } =
    useLoaderData<typeof loader>();
  const said: Answer | undefined = useActionData<typeof action>();
  if (open) {
    const { photo, form, choices, captionLength } = open;
    return (
      <Page title="Photos" intro="The file stays as it came; what is said about it can be changed.">
        <PhotoSheet {...open} reasonError={said?.reasonError}>
          <PhotoForm
            key={photo.id}
            values={said?.edit?.values ?? form}
            errors={said?.edit?.errors}
            saved={saved}
            choices={choices}
            captionLength={captionLength}
          />
        </PhotoSheet>
      </Page>
    );
  }
  return (
    <Page
      title="Photos"
      intro="Each is kept as it came, under the SHA-256 of its file. Put a scale in the picture and photograph before anything is moved."
    >
      <Sheet title="Add photos">
        <UploadForm
          key={`${paged.total} ${said?.upload?.refused.join() ?? ''}`}
          mostFiles={mostFiles}
          mostBytes={mostBytes}
          about={about}
          kept={said?.upload?.kept ?? added}
          refused={said?.upload?.refused ?? []}
        />
      </Sheet>
      <Sheet
        title={paged.total - removed === 1 ? '1 photo' : `${paged.total - removed} photos`}
        id="photos"
        aside={removed > 0 && <span className="soft">{removed} removed, at the end</span>}
      >
        {photos.length === 0 ? (
          <p className="soft">
            None yet. Start with both rails where the marks begin, then the first derailed wheels, then
            whatever will be moved next. See <Link to="../marks">Marks</Link>.
          </p>
        ) : (
          <ul className="photos">
            {photos.map((photo) => (
              <PhotoCard key={photo.id} photo={photo} href={`?photo=${photo.id}`} />
            ))}
          </ul>
        )}
        <Pager of={paged} what="photos" />
      </Sheet>
    </Page>
  );
}
