import { json, type ActionFunctionArgs, type LoaderFunctionArgs } from '@remix-run/node';
import { Form, Link, useActionData, useLoaderData } from '@remix-run/react';
import { loadCase } from '~/app/case.server';
import { Page } from '~/app/components/Page';
import { ReasonForm } from '~/app/components/ReasonForm';
import { Sheet } from '~/app/components/Sheet';
import { shapesView, type OwnShapeRow, type ShapeRow } from '~/app/traces/shapes.server';
import { readActor } from '~/app/who.server';
import { removeOwnShape, restoreOwnShape } from '~/db/own-shapes';

export function loader({ params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  return json({ caseId: loaded.caseId, kinds: shapesView(loaded) });
}

export async function action({ request, params }: ActionFunctionArgs) {
  const { db, caseId, record } = loadCase(params);
  const form = await request.formData();
  const shape = record.ownShapes.find(({ id }) => id === form.get('shape'));
  if (!shape) return json({ shape: '', error: 'There is no such shape in this case.' }, { status: 404 });
  const actor = await readActor(request, record);
  if (form.get('intent') === 'restore') {
    restoreOwnShape(db, caseId, shape.id, actor);
    return json(null);
  }
  const reason = String(form.get('reason') ?? '').trim();
  if (reason === '')
    return json({ shape: shape.id, error: 'Say why: a few words are enough.' }, { status: 422 });
  removeOwnShape(db, caseId, shape.id, reason, actor);
  return json(null);
}

const TITLES = { wheel: 'Wheels', rail: 'Rails' } as const;

function Built({ name, source, status, notes }: ShapeRow) {
  return (
    <li>
      <strong>{name}</strong> · {status}
      <p className="small soft">{source}</p>
      {notes.map((note) => (
        <p key={note} className="small">
          {note}
        </p>
      ))}
    </li>
  );
}

function Own({ shape, error }: { readonly shape: OwnShapeRow; readonly error?: string }) {
  return (
    <li>
      <strong>{shape.name}</strong> · your own
      <p className="small soft">
        {shape.source} · {shape.file}, SHA-256 <span className="hash">{shape.sha256}</span>
      </p>
      {shape.removed === null ? (
        <ReasonForm
          label={`Remove ${shape.name}`}
          intent="remove"
          explain="Traces can no longer be laid over it. Its file stays in the case, with the reason."
          hidden={{ shape: shape.id }}
          error={error}
        />
      ) : (
        <Form method="post" className="row">
          <input type="hidden" name="shape" value={shape.id} />
          <input type="hidden" name="intent" value="restore" />
          <span>Removed {shape.removed}</span>
          <button className="button button--small">Put it back</button>
        </Form>
      )}
    </li>
  );
}

export default function Shapes() {
  const { caseId, kinds } = useLoaderData<typeof loader>();
  const answer = useActionData<typeof action>();
  return (
    <Page
      title="Reference shapes"
      intro="New wheels and rails that traces are laid over. What is marked “from memory” was not checked against its standard: measure nothing from it alone."
      actions={<Link to={`/cases/${caseId}/wheels`}>Back to wheels</Link>}
    >
      {kinds.map(({ shape, built, own }) => (
        <Sheet
          key={shape}
          title={TITLES[shape]}
          id={shape}
          aside={
            <Link to={`/cases/${caseId}/traces/shapes/new?shape=${shape}`} className="button button--small">
              Add your own {shape}
            </Link>
          }
        >
          <ul className="stack">
            {own.map((each) => (
              <Own key={each.id} shape={each} error={answer?.shape === each.id ? answer.error : undefined} />
            ))}
            {built.map((each) => (
              <Built key={each.id} {...each} />
            ))}
          </ul>
        </Sheet>
      ))}
    </Page>
  );
}
