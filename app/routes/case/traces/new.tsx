import { json, redirect, type LoaderFunctionArgs } from '@remix-run/node';
import { Form, Link, useLoaderData } from '@remix-run/react';
import { loadCase } from '~/app/case.server';
import { LabelledSelect } from '~/app/components/LabelledSelect';
import { Page } from '~/app/components/Page';
import { Sheet } from '~/app/components/Sheet';
import { placeOf } from '~/app/subjects/place';
import { aboutChoices, aboutOf } from '~/app/traces/about';
import { isTraceWay, TRACE_WAYS, wayHref } from '~/app/traces/ways';

export function loader({ request, params }: LoaderFunctionArgs) {
  const { record, caseId } = loadCase(params);
  const search = new URL(request.url).searchParams;
  const about = search.get('about') ?? '';
  const way = search.get('by');
  if (isTraceWay(way) && aboutOf(record, about) !== null) return redirect(wayHref(caseId, way, about));
  const choices = aboutChoices(record).map(({ id, label }) => ({ id, label }));
  const of = aboutOf(record, about);
  const back = of === null ? `/cases/${caseId}/wheels` : placeOf(caseId, of.subject);
  return json({ caseId, choices, about, back, asked: search.has('by') });
}

export default function NewTrace() {
  const { caseId, choices, about, back, asked } = useLoaderData<typeof loader>();
  return (
    <Page
      title="Add an outline"
      intro="The shape of a wheel, of a rail head or of a switch point as somebody traced it. Flange, tread, hollow and wear are taken from it; of a point where its gauge side stands."
      actions={<Link to={back}>Back to what it is of</Link>}
    >
      <Sheet title="Of what, and how">
        {choices.length === 0 ? (
          <p>
            There is no wheelset, rail or turnout yet.{' '}
            <Link to={`/cases/${caseId}/records/wheelset/new`}>Add a wheelset</Link>,{' '}
            <Link to={`/cases/${caseId}/records/rail/new`}>a rail</Link> or{' '}
            <Link to={`/cases/${caseId}/records/turnout/new`}>a turnout</Link> first.
          </p>
        ) : (
          <Form method="get" className="form">
            <LabelledSelect
              id="about"
              name="about"
              label="Outline of"
              value={about}
              options={[{ id: '', label: 'Choose' }, ...choices]}
              error={asked && about === '' ? 'Choose a wheel, a rail or a point.' : undefined}
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
