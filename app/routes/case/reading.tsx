import { json, redirect, type ActionFunctionArgs, type LoaderFunctionArgs } from '@remix-run/node';
import { Link, useActionData, useLoaderData } from '@remix-run/react';
import { loadCase, notFound, type LoadedCase } from '~/app/case.server';
import { Page } from '~/app/components/Page';
import { CorrectForm } from '~/app/components/readings/CorrectForm';
import { ReasonForm } from '~/app/components/ReasonForm';
import { Sheet } from '~/app/components/Sheet';
import { SCREEN_OF } from '~/app/entities/screen-of';
import { correct } from '~/app/readings/correct.server';
import { trailOf } from '~/app/readings/trail.server';
import { readingsChoices } from '~/app/readings/view.server';
import { readActor } from '~/app/who.server';
import { withdrawReading } from '~/db/readings';
import type { Reading } from '~/lib/case/record';
import { GROUPS, findQuantity } from '~/lib/readings/quantities';

function readingIn({ record }: LoadedCase, id: string | undefined): Reading {
  const reading = record.readings.find((each) => each.id === id);
  if (!reading) throw notFound('There is no such reading in this case.');
  return reading;
}

const boxesOf = (reading: Reading): Record<string, string> => ({
  value: reading.state ?? reading.entered,
  examined: reading.examined === null ? '' : String(Math.round(reading.examined * 1000) / 10),
  person: reading.personId ?? '',
  instrument: reading.instrumentId ?? '',
  takenAt: reading.takenAt?.slice(0, 16) ?? '',
  disturbance: reading.disturbance,
  sampling: reading.sampling,
  note: reading.note,
});

function screenOf(reading: Reading): string {
  const group = GROUPS.find(({ quantities }) => quantities.some(({ id }) => id === reading.quantity));
  return group?.screen ?? (reading.subject.kind === 'case' ? 'scene' : SCREEN_OF[reading.subject.kind]);
}

export function loader({ params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  const reading = readingIn(loaded, params.readingId);
  const { newest, ...trail } = trailOf(loaded, reading);
  const { caseId } = loaded;
  return json({
    ...trail,
    caseId,
    quantity: reading.quantity,
    withdrawn: reading.withdrawn,
    newestId: newest.id,
    screen: screenOf(reading),
    subjectHref:
      reading.subject.kind === 'case'
        ? null
        : `/cases/${caseId}/records/${reading.subject.kind}/${reading.subject.id}`,
    disturbance: reading.disturbance,
    boxes: boxesOf(reading),
    choices: readingsChoices(loaded),
  });
}

export async function action({ request, params }: ActionFunctionArgs) {
  const loaded = loadCase(params);
  const { db, caseId, record } = loaded;
  const reading = readingIn(loaded, params.readingId);
  const form = await request.formData();
  const actor = await readActor(request, record);
  if (form.get('intent') === 'withdraw') {
    const reason = String(form.get('reason') ?? '');
    const done = withdrawReading(db, caseId, reading.id, reason, actor);
    if (done.ok) return redirect(`/cases/${caseId}/readings/${done.value}`);
    return json({ withdraw: done.message, correction: null }, { status: 422 });
  }
  const done = correct(form, loaded, reading, actor);
  if (done.ok) return redirect(`/cases/${caseId}/readings/${done.id}`);
  return json({ withdraw: null, correction: done }, { status: 422 });
}

export default function ReadingTrail() {
  const data = useLoaderData<typeof loader>();
  const answer = useActionData<typeof action>();
  const quantity = findQuantity(data.quantity);
  const here = `/cases/${data.caseId}/readings`;
  const refused = answer?.correction ?? undefined;
  return (
    <Page
      title={data.title}
      intro="One reading: what was entered, and everything that says how far it can be relied on."
      actions={
        <>
          {data.subjectHref && <Link to={data.subjectHref}>What it is a reading of</Link>}
          <Link to={`/cases/${data.caseId}/${data.screen}`}>Back to {data.screen}</Link>
        </>
      }
    >
      {!data.isNewest && (
        <div className="note note--care">
          This reading no longer stands: it was corrected or withdrawn later.{' '}
          <Link to={`${here}/${data.newestId}`}>Open the newest one</Link>
        </div>
      )}
      {data.isNewest && data.withdrawn && (
        <div className="note note--care">This reading is withdrawn. It feeds no finding.</div>
      )}
      <Sheet title="As it was read">
        <dl className="facts">
          {data.facts.map(({ label, text }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
      </Sheet>
      <Sheet title="Its history">
        <ol className="stack">
          {data.versions.map(({ id, text, at, reason, shown }) => (
            <li key={id}>
              {shown ? <strong>{text}</strong> : <Link to={`${here}/${id}`}>{text}</Link>}
              <span className="soft"> · entered {at}</span>
              {reason && <p>Reason: {reason}</p>}
            </li>
          ))}
        </ol>
      </Sheet>
      {data.isNewest && !data.withdrawn && (
        <Sheet title="What rests on it">
          {data.usedIn.length === 0 ? (
            <p className="soft">No finding uses this reading as it stands.</p>
          ) : (
            <ul className="plain-list">
              {data.usedIn.map(({ id, title, href }) => (
                <li key={id}>
                  <Link to={href}>{title}</Link>
                </li>
              ))}
            </ul>
          )}
        </Sheet>
      )}
      {data.isNewest && quantity && (
        <Sheet title={data.withdrawn ? 'Put it back' : 'Correct it'}>
          <p className="soft">The reading above stays as it is; what you enter here takes its place.</p>
          <CorrectForm
            quantity={quantity}
            choices={data.choices}
            disturbance={data.disturbance}
            values={refused?.values ?? data.boxes}
            errors={refused?.errors}
          />
          {!data.withdrawn && (
            <ReasonForm
              label="Withdraw this reading"
              intent="withdraw"
              explain="It leaves the findings. It stays in the case, with the reason beside it."
              error={answer?.withdraw ?? undefined}
            />
          )}
        </Sheet>
      )}
    </Page>
  );
}
