import { json, redirect, type ActionFunctionArgs, type LoaderFunctionArgs } from '@remix-run/node';
import { Form, Link, useActionData, useLoaderData } from '@remix-run/react';
import { loadCase } from '~/app/case.server';
import { LabelledSelect } from '~/app/components/LabelledSelect';
import { BesideBase } from '~/app/components/track/BesideBase';
import { ConditionTable } from '~/app/components/methods/ConditionTable';
import { LimitTable } from '~/app/components/methods/LimitTable';
import { Message } from '~/app/components/Message';
import { Page } from '~/app/components/Page';
import { Sheet } from '~/app/components/Sheet';
import { limitsView, saveLimits, type LimitsAnswer } from '~/app/track/railroad-limits.server';
import { readActor } from '~/app/who.server';

export async function loader({ request, params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  const view = limitsView(loaded);
  const from = new URL(request.url).searchParams.get('from');
  const taken = view.elsewhere.find(({ caseId }) => caseId === from);
  return json({ caseId: loaded.caseId, view, taken: taken ?? null });
}

export async function action({ request, params }: ActionFunctionArgs) {
  const loaded = loadCase(params);
  const form = await request.formData();
  const answer: LimitsAnswer | null = await saveLimits(form, loaded, await readActor(request, loaded.record));
  return answer === null
    ? redirect(`/cases/${loaded.caseId}/track/limits#limits`)
    : json(answer, { status: 422 });
}

export default function TrackLimits() {
  const { caseId, view, taken } = useLoaderData<typeof loader>();
  const answer = useActionData<typeof action>();
  const { set, names, elsewhere } = view;
  const chosen = answer?.chosen ?? taken?.chosen ?? view.chosen;
  return (
    <Page
      title="The railroad’s own limits"
      intro="Limits from the railroad’s own standard, a limit to a line. They are kept with the case, word for word, and can be chosen as what its readings are held against."
      actions={
        <Link className="button" to={`/cases/${caseId}/track`}>
          Back to Track
        </Link>
      }
    >
      <Sheet title="Enter or paste" id="enter">
        {answer && (
          <Message tone="care">
            Nothing was kept yet. What to write instead:
            <ul className="plain-list">
              {answer.bad.map(({ line, message }, index) => (
                <li key={index}>
                  {line === null ? '' : `Line ${line}: `}
                  {message}
                </li>
              ))}
            </ul>
          </Message>
        )}
        {taken && !answer && (
          <Message tone="good">
            Taken over from case {taken.number}: check the edition, then keep them for this case.
          </Message>
        )}
        <Form method="post" className="form" encType="multipart/form-data" key={taken?.caseId ?? 'own'}>
          <div className="form__grid">
            <LabelledSelect
              id="based-on"
              name="basedOn"
              label="Base set"
              help="Its classes are used, and its limits where these are silent."
              value={chosen.basedOn}
              options={view.bases}
            />
            <LabelledSelect
              id="where-silent"
              name="whereSilent"
              label="Where these limits are silent"
              value={chosen.whereSilent}
              options={view.whereSilent}
            />
          </div>
          <div className="field">
            <label htmlFor="limits-text">Limits</label>
            <p className="field__help" id="limits-help">
              Two lines first: name and document. Then what is limited; most or least; the amount with its
              unit, for every class or class by class (a dash for none); and where needed tangent or curve,
              condemned (when a value exactly at the limit is condemned too), and the item of the document.
              {view.isExample && ' What stands here is an example: write your own over it.'}
            </p>
            <textarea
              id="limits-text"
              name="limits"
              rows={14}
              spellCheck={false}
              defaultValue={answer?.text ?? taken?.text ?? view.text}
              aria-describedby="limits-help"
              aria-invalid={answer ? true : undefined}
            />
          </div>
          <div className="field">
            <label htmlFor="limits-file">Or a text file with such lines</label>
            <input id="limits-file" name="file" type="file" accept=".txt,.csv,.json,text/plain" />
          </div>
          <label className="check">
            <input type="checkbox" name="use" defaultChecked />
            Hold the readings of this case against these limits
          </label>
          <div className="row">
            <button className="button button--main">Keep these limits</button>
          </div>
        </Form>
        {elsewhere.length > 0 && (
          <>
            <h3>Kept in other cases of the same railroad</h3>
            <ul className="plain-list">
              {elsewhere.map((other) => (
                <li key={other.caseId}>
                  <Link to={`?from=${other.caseId}#enter`}>Take over those of case {other.number}</Link>
                </li>
              ))}
            </ul>
          </>
        )}
        <details className="disclose">
          <summary>What can be limited, and the names to write</summary>
          <div className="table-wrap" role="region" aria-label="Names" tabIndex={0}>
            <table>
              <thead>
                <tr>
                  <th scope="col">Write</th>
                  <th scope="col">What it is</th>
                </tr>
              </thead>
              <tbody>
                {names.map(({ id, name, unit }) => (
                  <tr key={id}>
                    <td>{id}</td>
                    <td>
                      {name}
                      {unit === 'count' ? ' (a number)' : ''}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        </details>
      </Sheet>
      {set && (
        <Sheet title="As kept" id="limits">
          <p>
            {view.inUse
              ? 'The readings of this case are held against these limits.'
              : 'Kept, and not what the readings of this case are held against: choose them on the Scene screen, or keep them again with the box ticked.'}
          </p>
          <p>
            <strong>{set.name}</strong>: {set.edition}
          </p>
          {view.beside && <BesideBase {...view.beside} />}
          <details className="disclose">
            <summary>Every limit, with where it is from ({set.limits.length})</summary>
            <LimitTable set={set} />
            <ConditionTable set={set} />
          </details>
        </Sheet>
      )}
    </Page>
  );
}
