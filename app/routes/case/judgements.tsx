import { json, redirect, type ActionFunctionArgs, type LoaderFunctionArgs } from '@remix-run/node';
import { Form, Link, useActionData, useLoaderData } from '@remix-run/react';
import { loadCase } from '~/app/case.server';
import { LabelledInput } from '~/app/components/LabelledInput';
import { Page } from '~/app/components/Page';
import { Sheet } from '~/app/components/Sheet';
import { keepJudgement } from '~/app/explanations/judgement-form.server';
import { judgementsView } from '~/app/explanations/judgements-view.server';
import { readActor } from '~/app/who.server';

const aboutOf = (request: Request): string | null => new URL(request.url).searchParams.get('about');

export function loader({ request, params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  return json({ caseId: loaded.caseId, ...judgementsView(loaded, aboutOf(request)) });
}

export async function action({ request, params }: ActionFunctionArgs) {
  const loaded = loadCase(params);
  const form = await request.formData();
  const refused = keepJudgement(loaded, form, await readActor(request, loaded.record));
  if (refused) return json({ refused }, { status: 422 });
  return redirect(`/cases/${loaded.caseId}/explanations/judgements?about=${aboutOf(request) ?? ''}`);
}

export default function Judgements() {
  const { caseId, about, title, definition, rows, topics, changes } = useLoaderData<typeof loader>();
  const refused = useActionData<typeof action>()?.refused ?? null;
  return (
    <Page
      title="Judgements"
      intro="All these are engineering judgement, each with its reason. Change one where you know better, with a written reason; both the delivered and the changed answer are shown, and the change is printed in the report."
      actions={
        <Link className="button" to={`/cases/${caseId}/explanations`}>
          Back to Explanations
        </Link>
      }
    >
      <nav aria-label="Judgements about">
        <ul className="row plain-list">
          {topics.map(({ id, name }) => (
            <li key={id}>
              <Link
                className="action-link"
                to={`?about=${id}`}
                aria-current={id === about ? 'page' : undefined}
              >
                {name}
              </Link>
            </li>
          ))}
        </ul>
      </nav>
      <Sheet
        title={title}
        aside={<span className="chip">{changes === 1 ? '1 change' : `${changes} changes`} in this case</span>}
      >
        {definition && <p className="soft">{definition}</p>}
        <ul className="findings">
          {rows.map(({ path, what, value, reason, changed }) => {
            const own = refused?.path === path ? refused : null;
            return (
              <li key={path} className="finding">
                <div className="finding__line">
                  <span>{what}</span>
                  <strong>
                    {changed ? (
                      <>
                        <del className="soft">{value}</del> {changed.value}
                      </>
                    ) : (
                      value
                    )}
                  </strong>
                </div>
                <p className="small soft">{changed ? `Changed: ${changed.reason}` : reason}</p>
                <details className="disclose" open={own !== null}>
                  <summary>Change it …</summary>
                  <Form method="post" className="form" preventScrollReset noValidate>
                    <input type="hidden" name="path" value={path} />
                    <LabelledInput
                      id={`${path}-value`}
                      name="value"
                      label="Probability"
                      inputMode="decimal"
                      help="Between 0.001 and 0.999."
                      value={own?.value ?? String(changed?.value ?? value)}
                    />
                    <LabelledInput
                      id={`${path}-reason`}
                      name="reason"
                      label="Reason"
                      value={own?.reason ?? changed?.reason}
                      error={own?.message}
                    />
                    <div className="row">
                      <button className="button button--main" name="intent" value="change">
                        Keep the change
                      </button>
                      {changed && (
                        <button className="button" name="intent" value="clear">
                          Back to {value}
                        </button>
                      )}
                    </div>
                  </Form>
                </details>
              </li>
            );
          })}
        </ul>
      </Sheet>
    </Page>
  );
}
