import { json, redirect, type ActionFunctionArgs, type LoaderFunctionArgs } from '@remix-run/node';
import { Form, Link, useActionData, useLoaderData } from '@remix-run/react';
import { loadCase } from '~/app/case.server';
import { Message } from '~/app/components/Message';
import { Page } from '~/app/components/Page';
import { Sheet } from '~/app/components/Sheet';
import { sizeText } from '~/app/photos/size-text';
import { LARGEST_BYTES } from '~/app/photos/limits.server';
import { subjectKey } from '~/app/photos/subject';
import { takeUpload } from '~/app/photos/upload.server';
import { photosInOrder, photoView } from '~/app/photos/view.server';
import { aboutView, askedAbout } from '~/app/traces/asked.server';
import { readActor } from '~/app/who.server';

const hrefOf = (caseId: string, photoId: string, about: string): string =>
  `/cases/${caseId}/traces/photo/${photoId}?about=${encodeURIComponent(about)}`;

export function loader({ request, params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  const { caseId } = loaded;
  const asked = askedAbout(loaded, new URL(request.url).searchParams);
  const about = aboutView(loaded, asked);
  const ofIt = ({ subject }: { subject: { kind: string; id: string } | null }): boolean =>
    subject?.kind === asked.subject.kind && subject.id === asked.subject.id;
  const photos = photosInOrder(loaded)
    .filter(({ removed }) => removed === null)
    .sort((a, b) => Number(ofIt(b)) - Number(ofIt(a)));
  return json({
    about,
    subject: subjectKey(asked.subject),
    largest: sizeText(LARGEST_BYTES),
    photos: photos.map((photo) => {
      const { id, thumb, alt, caption, fileName } = photoView(loaded, photo);
      return { id, thumb, alt, text: caption || fileName, href: hrefOf(caseId, id, about.key) };
    }),
  });
}

export async function action({ request, params }: ActionFunctionArgs) {
  const before = loadCase(params);
  const about = aboutView(before, askedAbout(before, new URL(request.url).searchParams));
  const there = new Set(before.record.photos.map(({ id }) => id));
  const { refused } = await takeUpload(request, before, await readActor(request, before.record));
  const added = loadCase(params).record.photos.find(({ id }) => !there.has(id));
  if (added) return redirect(hrefOf(before.caseId, added.id, about.key));
  return json({ refused: refused.length > 0 ? refused : ['Choose the picture first.'] }, { status: 422 });
}

export default function ChoosePicture() {
  const { about, subject, largest, photos } = useLoaderData<typeof loader>();
  const answer = useActionData<typeof action>();
  return (
    <Page
      title="Outline from a picture"
      intro={`${about.name}. Photograph or scan it with the whole sheet in the picture, all four corners, as square from above as you can.`}
      actions={<Link to={about.back}>Back to what it is of</Link>}
    >
      <Sheet title="A new picture">
        {answer && (
          <Message tone="bad">
            {answer.refused.map((message) => (
              <span key={message}>{message} </span>
            ))}
          </Message>
        )}
        <Form method="post" encType="multipart/form-data" className="form">
          <input type="hidden" name="subject" value={subject} />
          <div className="field">
            <label htmlFor="picture-file">Picture of the drawn outline</label>
            <p className="field__help" id="picture-file-help">
              JPEG, PNG or WebP, at most {largest}. It is kept among the photos of the case, as it came.
            </p>
            <input
              id="picture-file"
              name="photo"
              type="file"
              accept="image/jpeg,image/png,image/webp,image/heic,image/heif,.heic"
              aria-describedby="picture-file-help"
            />
          </div>
          <div>
            <button className="button button--main">Keep the picture and trace on it</button>
          </div>
        </Form>
      </Sheet>
      {photos.length > 0 && (
        <Sheet title="Or one that is in the case">
          <ul className="photos">
            {photos.map(({ id, thumb, alt, text, href }) => (
              <li key={id} className="photo">
                <Link to={href} className="photo__picture">
                  <img src={thumb} alt={alt} loading="lazy" decoding="async" />
                </Link>
                <p>
                  <Link to={href}>{text}</Link>
                </p>
              </li>
            ))}
          </ul>
        </Sheet>
      )}
    </Page>
  );
}
