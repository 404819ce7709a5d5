import { json, redirect, type ActionFunctionArgs, type LoaderFunctionArgs } from '@remix-run/node';
import { Link, useActionData, useLoaderData } from '@remix-run/react';
import { loadCase, notFound } from '~/app/case.server';
import { EntityForm } from '~/app/components/EntityForm';
import { Page } from '~/app/components/Page';
import { refOptions } from '~/app/entities/options';
import { isEntityKind, readRecord } from '~/app/entities/save.server';
import { SCREEN_OF } from '~/app/entities/screen-of';
import { localPath } from '~/app/local-path';
import { readActor } from '~/app/who.server';
import { addEntity } from '~/db/entities';
import { standing } from '~/lib/case/current';
import { KINDS } from '~/lib/case/kinds';
import type { CaseRecord, EntityKind } from '~/lib/case/record';

function kindIn(params: LoaderFunctionArgs['params']): EntityKind {
  if (!isEntityKind(params.kind)) throw notFound('There is no such kind of record.');
  return params.kind;
}

const backTo = (request: Request, caseId: string, kind: EntityKind): string =>
  localPath(new URL(request.url).searchParams.get('back'), `/cases/${caseId}/${SCREEN_OF[kind]}`);

/** Boxes filled from the address, such as ?vehicle=…, and the next free position in the train. */
function startValues(request: Request, record: CaseRecord, kind: EntityKind): Record<string, string> {
  const given = new URL(request.url).searchParams;
  const values = Object.fromEntries(
    KINDS[kind].fields.flatMap(({ id }) => (given.has(id) ? [[id, given.get(id) ?? ''] as const] : [])),
  );
  if (kind !== 'vehicle' || values.position) return values;
  const last = Math.max(0, ...standing(record, 'vehicle').map(({ fields }) => Number(fields.position) || 0));
  return { ...values, position: String(last + 1) };
}

export function loader({ request, params }: LoaderFunctionArgs) {
  const { record } = loadCase(params);
  const kind = kindIn(params);
  return json({
    kind,
    back: backTo(request, record.id, kind),
    options: refOptions(record, KINDS[kind]),
    values: startValues(request, record, kind),
  });
}

export async function action({ request, params }: ActionFunctionArgs) {
  const { db, caseId, record } = loadCase(params);
  const kind = kindIn(params);
  const form = await request.formData();
  const sent = readRecord(form, KINDS[kind], record);
  if (!sent.ok) return json(sent, { status: 422 });
  addEntity(db, caseId, kind, sent.fields, await readActor(request, record));
  return redirect(form.has('another') ? request.url : backTo(request, caseId, kind));
}

export default function NewRecord() {
  const { kind, back, options, values } = useLoaderData<typeof loader>();
  const answer = useActionData<typeof action>();
  const { name } = KINDS[kind];
  return (
    <Page title={`New: ${name.toLowerCase()}`}>
      <section className="sheet" aria-label={name}>
        <EntityForm
          kind={KINDS[kind]}
          values={answer?.values ?? values}
          errors={answer?.errors}
          options={options}
          submit={`Add this ${name.toLowerCase()}`}
          aside={
            <>
              <button className="button" name="another" value="1">
                Add and enter another
              </button>
              <Link to={back}>Back without adding</Link>
            </>
          }
        />
      </section>
    </Page>
  );
}
