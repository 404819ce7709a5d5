import { json, redirect, type ActionFunctionArgs, type LoaderFunctionArgs } from '@remix-run/node';
import { Form, Link, useActionData, useLoaderData } from '@remix-run/react';
import { loadCase, notFound, type LoadedCase } from '~/app/case.server';
import { EntityForm } from '~/app/components/EntityForm';
import { Page } from '~/app/components/Page';
import { ReasonForm } from '~/app/components/ReasonForm';
import { PhotoStrip } from '~/app/components/subjects/PhotoStrip';
import { Sheet } from '~/app/components/Sheet';
import { valuesOf } from '~/app/entities/form-values';
import { refOptions } from '~/app/entities/options';
import { isEntityKind, readRecord } from '~/app/entities/save.server';
import { SCREEN_OF } from '~/app/entities/screen-of';
import { localPath } from '~/app/local-path';
import { readingsOf } from '~/app/readings/index.server';
import { quantityText, readingText } from '~/app/readings/wording';
import { photoStrip } from '~/app/subjects/part.server';
import { moment } from '~/app/times';
import { readActor } from '~/app/who.server';
import { removeEntity, restoreEntity, updateEntity } from '~/db/entities';
import { KINDS } from '~/lib/case/kinds';
import { nameOfEntity } from '~/lib/case/name-of';
import { SUBJECT_KINDS, type SubjectKind } from '~/lib/readings/quantity';

const isSubject = (kind: string): kind is SubjectKind => (SUBJECT_KINDS as readonly string[]).includes(kind);

function recordIn({ record }: LoadedCase, params: LoaderFunctionArgs['params']) {
  const { kind, id } = params;
  if (!isEntityKind(kind)) throw notFound('There is no such kind of record.');
  const entity = record.entities[kind].find((each) => each.id === id);
  if (!entity) throw notFound(`There is no such ${KINDS[kind].name.toLowerCase()} in this case.`);
  return { kind, entity };
}

export function loader({ request, params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  const { record, caseId } = loaded;
  const { kind, entity } = recordIn(loaded, params);
  const readings = isSubject(kind) ? readingsOf(loaded, { kind, id: entity.id }) : [];
  return json({
    caseId,
    kind,
    back: localPath(new URL(request.url).searchParams.get('back'), `/cases/${caseId}/${SCREEN_OF[kind]}`),
    name: nameOfEntity(record, kind, entity),
    removed: entity.removed && { at: moment(entity.removed.at), reason: entity.removed.reason },
    values: valuesOf(KINDS[kind], entity.fields),
    options: refOptions(record, KINDS[kind]),
    readings: readings.map((reading) => ({
      id: reading.id,
      what: quantityText(reading.quantity, reading.slot),
      text: readingText(reading),
    })),
    photos: isSubject(kind) ? photoStrip(loaded, { kind, id: entity.id }) : null,
  });
}

export async function action({ request, params }: ActionFunctionArgs) {
  const loaded = loadCase(params);
  const { db, caseId, record } = loaded;
  const { kind, entity } = recordIn(loaded, params);
  const form = await request.formData();
  const actor = await readActor(request, record);
  const back = localPath(
    new URL(request.url).searchParams.get('back'),
    `/cases/${caseId}/${SCREEN_OF[kind]}`,
  );
  const intent = form.get('intent');
  if (intent === 'restore') {
    restoreEntity(db, caseId, kind, entity.id, actor);
    return redirect(request.url);
  }
  if (intent === 'remove') {
    const reason = String(form.get('reason') ?? '').trim();
    if (reason === '') {
      return json(
        { ok: false as const, reasonError: 'Say why: a few words, such as “entered twice”.' },
        { status: 422 },
      );
    }
    removeEntity(db, caseId, kind, entity.id, reason, actor);
    return redirect(back);
  }
  const sent = readRecord(form, KINDS[kind], record);
  if (!sent.ok) return json(sent, { status: 422 });
  updateEntity(db, caseId, kind, entity.id, sent.fields, actor);
  return redirect(back);
}

export default function EditRecord() {
  const data = useLoaderData<typeof loader>();
  const answer = useActionData<typeof action>();
  const sent = answer && 'values' in answer ? answer : undefined;
  const kind = KINDS[data.kind];
  const name = kind.name.toLowerCase();
  return (
    <Page title={data.name} intro={kind.name} actions={<Link to={data.back}>Back</Link>}>
      {data.removed && (
        <div className="note note--care">
          <p>
            This {name} was removed on {data.removed.at}: {data.removed.reason}
          </p>
          <Form method="post">
            <input type="hidden" name="intent" value="restore" />
            <button className="button">Put it back</button>
          </Form>
        </div>
      )}
      <section className="sheet" aria-label={kind.name}>
        <EntityForm
          kind={kind}
          values={sent?.values ?? data.values}
          errors={sent?.errors}
          options={data.options}
          intent="save"
          submit="Save the changes"
          aside={<Link to={data.back}>Back without saving</Link>}
        />
      </section>
      {data.readings.length > 0 && (
        <Sheet title="Readings of it">
          <ul className="plain-list">
            {data.readings.map(({ id, what, text }) => (
              <li key={id}>
                {what}:{' '}
                <Link to={`/cases/${data.caseId}/readings/${id}`} className="number">
                  {text}
                </Link>
              </li>
            ))}
          </ul>
        </Sheet>
      )}
      {data.photos && (
        <Sheet title="Photos of it" id="photos">
          <PhotoStrip {...data.photos} />
        </Sheet>
      )}
      {!data.removed && (
        <ReasonForm
          label={`Remove this ${name}`}
          intent="remove"
          explain="It leaves the lists and the findings, with the reason beside it. It stays in the log and can be put back."
          error={answer && 'reasonError' in answer ? answer.reasonError : undefined}
        />
      )}
    </Page>
  );
}
