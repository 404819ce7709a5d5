import { json, redirect, type LoaderFunctionArgs } from '@remix-run/node';
import { Form, Link, useLoaderData } from '@remix-run/react';
import { loadCase } from '~/app/case.server';
import { LabelledSelect } from '~/app/components/LabelledSelect';
import { Page } from '~/app/components/Page';
import { Sheet } from '~/app/components/Sheet';
import { aboutChoices, aboutOf } from '~/app/traces/about';
import { isTraceWay, TRACE_WAYS, wayHref } from '~/app/traces/ways';

export function loader({ request, params }: LoaderFunctionArgs) {
  const { record, caseId } = loadCase(params);
  const search = new URL(request.url).searchParams;
  const about = search.get('about') ?? '';
  const way = search.get('by');
  if (isTraceWay(way) && aboutOf(record, about) !== null) return redirect(wayHref(caseId, way, about));
  const choices = aboutChoices(record).map(({ id, label }) => ({ id, label }));
  return json({ caseId, choices, about, asked: search.has('by') });
}

export default function NewTrace() {
  const { caseId, choices, about, asked } = useLoaderData<typeof loader>();
  return (
    <Page
      title="Add an outline"
      intro="The shape of a wheel or of a rail head as somebody traced it. Flange, tread, hollow and wear are taken from it."
      actions={<Link to={`/cases/${caseId}/wheels`}>Back to wheels</Link>}
    >
      <Sheet title="Of what, and how">
        {choices.length === 0 ? (
          <p>
            There is no wheelset and no rail yet.{' '}
            <Link to={`/cases/${caseId}/records/wheelset/new`}>Add a wheelset</Link> or{' '}
            <Link to={`/cases/${caseId}/records/rail/new`}>a rail</Link> first.
          </p>
        ) : (
          <Form method="get" className="form">
            <LabelledSelect
              id="about"
              name="about"
              label="Outline of"
              value={about}
              options={[{ id: '', label: 'Choose' }, ...choices]}
              error={asked && about === '' ? 'Choose a wheel or a rail.' : undefined}
            />
            <fieldset className="field">
              <legend>How it was taken</legend>
              {TRACE_WAYS.map(({ id, label, explain }, index) => (
                <label key={id} className="check">
                  <input type="radio" name="by" value={id} defaultChecked={index === 0} />
                  <span>
                    {label} <span className="soft">{explain}</span>
                  </span>
                </label>
              ))}
            </fieldset>
            <div>
              <button className="button button--main">Go on</button>
            </div>
          </Form>
        )}
      </Sheet>
    </Page>
  );
}
