import { json, redirect, type ActionFunctionArgs, type LoaderFunctionArgs } from '@remix-run/node';
import { Form, Link, useActionData, useLoaderData } from '@remix-run/react';
import { Message } from '~/app/components/Message';
import { Page } from '~/app/components/Page';
import { Sheet } from '~/app/components/Sheet';
import { PhotoTracer } from '~/app/components/traces/photo/PhotoTracer';
import { SaidFields } from '~/app/components/traces/SaidFields';
import { photoIn } from '~/app/photos/find.server';
import { systemOf } from '~/app/readings/take.server';
import { readingsChoices } from '~/app/readings/view.server';
import { aboutView, askedAbout } from '~/app/traces/asked.server';
import { HELD_SQUARE } from '~/app/traces/how-to-trace';
import { keepTrace } from '~/app/traces/keep.server';
import { focal35Of, readTracing, workingPicture } from '~/app/traces/photo/read.server';
import { startOf } from '~/app/traces/photo/start.server';
import { firstBoxes, readNewSaid, sentBoxes } from '~/app/traces/said.server';
import { wayHref } from '~/app/traces/ways';
import { readActor } from '~/app/who.server';

export async function loader({ request, params }: LoaderFunctionArgs) {
  const { loaded, photo } = photoIn(params);
  const { record, caseId } = loaded;
  const search = new URL(request.url).searchParams;
  const about = aboutView(loaded, askedAbout(loaded, search));
  const actor = await readActor(request, record);
  const before = record.traces.find(({ id }) => id === search.get('again'));
  return json({
    about,
    choose: wayHref(caseId, 'photo', about.key),
    fileName: photo.fileName,
    sha256: photo.sha256,
    picture: {
      url: `/cases/${caseId}/photos/${photo.id}/thumb?size=trace`,
      size: await workingPicture(photo),
      focal35Mm: await focal35Of(photo),
      system: systemOf(record.fields),
      start: startOf(loaded, photo, search.get('again')),
    },
    boxes: {
      ...firstBoxes(actor),
      takenAt: photo.takenAt ?? '',
      // Traced again, it is of the same cross-section of a point.
      behind: before?.making.behindEntered ?? '',
    },
    choices: readingsChoices(loaded),
  });
}

export async function action({ request, params }: ActionFunctionArgs) {
  const { loaded, photo } = photoIn(params);
  const { caseId, record } = loaded;
  const about = askedAbout(loaded, new URL(request.url).searchParams);
  const form = await request.formData();
  const { said, errors } = readNewSaid(form, record, about.shape);
  const refused = (error: string | null) => json({ error, errors, boxes: sentBoxes(form) }, { status: 422 });
  const traced = await readTracing(form, loaded, photo);
  if (!traced.ok) return refused(traced.message);
  if (Object.keys(errors).length > 0) return refused(null);
  const { outline, making, uncertainty } = traced.value;
  const drawn = { outline, making, uncertainty, sha256: photo.sha256, fileName: photo.fileName };
  const kept = keepTrace(loaded, about, drawn, said, form, await readActor(request, record));
  return kept.ok ? redirect(`/cases/${caseId}/traces/${kept.value}`) : refused(kept.message);
}

export default function TraceOnPhoto() {
  const { about, choose, fileName, sha256, picture, boxes, choices } = useLoaderData<typeof loader>();
  const answer = useActionData<typeof action>();
  const values = answer?.boxes ?? boxes;
  const errors: Readonly<Record<string, string>> = answer?.errors ?? {};
  return (
    <Page
      title="Outline from a picture"
      intro={`${about.name}. Nothing is in the case until you keep it.`}
      actions={
        <>
          <Link to={choose}>Another picture</Link>
          <Link to={about.back}>Back to what it is of</Link>
        </>
      }
    >
      <Sheet title="The drawn line" id="picture">
        <p className="soft">
          {fileName} · SHA-256 <span className="hash">{sha256}</span>
        </p>
        <noscript>
          <p className="note note--care">
            Tracing on a picture needs scripts. Allow them, or bring the outline in as a file or as typed pin
            offsets.
          </p>
        </noscript>
        {about.shape === 'point' && <p className="soft">{HELD_SQUARE}</p>}
        <Form method="post" className="form" noValidate>
          {answer?.error && <Message tone="bad">{answer.error}</Message>}
          {Object.keys(errors).length > 0 && (
            <Message tone="bad">
              Something below cannot be read; everything you entered is still there.
            </Message>
          )}
          <PhotoTracer shape={about.shape} {...picture} />
          <SaidFields isNew shape={about.shape} choices={choices} values={values} errors={errors} />
          <label className="row">
            <input type="checkbox" name="mirrored" defaultChecked={values.mirrored !== ''} /> The drawing
            shows it the other way round, as a mirror would
          </label>
          <div>
            <button className="button button--main">Keep this outline</button>
          </div>
        </Form>
      </Sheet>
    </Page>
  );
}
