import { json, type ActionFunctionArgs, type LoaderFunctionArgs } from '@remix-run/node';
import { Form, Link, useActionData, useLoaderData } from '@remix-run/react';
import { loadCase, notFound, type LoadedCase } from '~/app/case.server';
import { SvgView } from '~/app/components/FigureView';
import { LabelledSelect } from '~/app/components/LabelledSelect';
import { Message } from '~/app/components/Message';
import { Page } from '~/app/components/Page';
import { ReasonForm } from '~/app/components/ReasonForm';
import { Sheet } from '~/app/components/Sheet';
import { FeatureTable } from '~/app/components/traces/FeatureTable';
import { HandForm } from '~/app/components/traces/HandForm';
import { SaidFields } from '~/app/components/traces/SaidFields';
import { useRedraw } from '~/app/components/traces/use-redraw';
import { systemOf } from '~/app/readings/take.server';
import { readingsChoices } from '~/app/readings/view.server';
import { featuresView, featureValues } from '~/app/traces/features.server';
import { handOf, readHand, sentHand } from '~/app/traces/hand.server';
import { tracePage } from '~/app/traces/page.server';
import { boxesOfTrace } from '~/app/traces/said.server';
import { saveTrace } from '~/app/traces/save.server';
import { readActor } from '~/app/who.server';
import type { Trace } from '~/lib/case/trace';

function traceIn({ record }: LoadedCase, id: string | undefined): Trace {
  const trace = record.traces.find((each) => each.id === id);
  if (!trace) throw notFound('There is no such outline in this case.');
  return trace;
}

export async function loader({ request, params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  const trace = traceIn(loaded, params.traceId);
  const search = new URL(request.url).searchParams;
  const trying = search.has('trying');
  const hand = trying ? sentHand(search) : handOf(trace);
  const values = await featureValues(loaded, trace);
  const shown = { trace, values, hand: readHand(hand).trial, trying };
  return json({
    page: tracePage(loaded, search.get('over'), shown),
    features: featuresView(values, systemOf(loaded.record.fields)),
    trying,
    hand,
    said: boxesOfTrace(trace, loaded.record),
    choices: readingsChoices(loaded),
  });
}

export async function action({ request, params }: ActionFunctionArgs) {
  const loaded = loadCase(params);
  const trace = traceIn(loaded, params.traceId);
  const form = await request.formData();
  const actor = await readActor(request, loaded.record);
  const answer = saveTrace({ loaded, trace, form, actor });
  return json(answer, { status: answer.ok ? 200 : 422 });
}

export default function TracePage() {
  const { page, features, trying, hand, said, choices } = useLoaderData<typeof loader>();
  const answer = useActionData<typeof action>();
  const redraw = useRedraw();
  const refused = (intent: string) => (answer && !answer.ok && answer.intent === intent ? answer : undefined);
  const over = page.reference?.id ?? '';
  const again = `/cases/${page.caseId}/traces/${page.id}`;
  return (
    <Page
      title={page.title}
      intro="One outline: its line, what is taken from it, and everything that says how far it can be relied on."
      actions={
        <>
          {page.again && <Link to={page.again}>Trace it again from these points</Link>}
          {page.shape !== 'point' && <Link to={`/cases/${page.caseId}/contact`}>Wheel on rail</Link>}
          <Link to={page.back}>Back to what it is of</Link>
        </>
      }
    >
      {answer?.ok && <Message tone="good">{answer.done}</Message>}
      {page.removed && (
        <div className="note note--care">
          Removed {page.removed.at}: {page.removed.reason}. It feeds no finding.
          <Form method="post">
            <input type="hidden" name="intent" value="restore" />
            <button className="button button--small">Put it back</button>
          </Form>
        </div>
      )}
      <Sheet title="The outline" id="outline">
        {trying && (
          <div className="note note--care" role="status">
            <strong>A trial.</strong> The picture shows what is typed below; nothing is kept yet.{' '}
            <Link to={again}>As it is kept</Link>
          </div>
        )}
        {page.problem && (
          <div className="note note--bad" role="alert">
            <strong>It could not be placed.</strong> {page.problem}
          </div>
        )}
        <div className="only-wide">
          <SvgView html={{ __html: page.pictures.wide }} />
        </div>
        <div className="only-narrow">
          <SvgView html={{ __html: page.pictures.narrow }} />
        </div>
        {page.remarks.length > 0 && (
          <ul className="plain-list small">
            {page.remarks.map((remark) => (
              <li key={remark}>{remark}</li>
            ))}
          </ul>
        )}
        {page.shape !== 'point' && (
          <>
            <Form method="get" className="form" {...redraw}>
              <LabelledSelect
                id="over"
                name="over"
                label="Laid over"
                value={over}
                options={page.references}
              />
              <noscript>
                <button className="button button--small">Lay it over this one</button>
              </noscript>
            </Form>
            <p className="small soft">
              {page.reference && `${page.reference.source}. Status: ${page.reference.status}. `}
              <Link to={`/cases/${page.caseId}/traces/shapes`}>All reference shapes</Link>
            </p>
          </>
        )}
      </Sheet>
      <Sheet title="What is taken from it" id="features">
        <FeatureTable features={features} />
      </Sheet>
      <Sheet title="Correct how it lies" id="hand">
        <p className="soft">
          {page.shape === 'point'
            ? 'Its back edge lies at the upright line and its highest part at the level one; it was not turned.'
            : 'It was placed by the parts that do not wear.'}{' '}
          Where that went wrong, move it here; the line itself stays as it came.
        </p>
        <HandForm
          shape={page.shape}
          over={over}
          values={refused('hand')?.hand ?? hand}
          errors={refused('hand')?.errors}
        />
      </Sheet>
      <Sheet title="How it came into the case">
        <dl className="facts">
          {page.facts.map(({ label, text }, index) => (
            <div key={index}>
              <dt>{label}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
        <details className="disclose" open={refused('said') !== undefined}>
          <summary>Change what is said of it …</summary>
          <Form method="post" className="form" noValidate>
            <input type="hidden" name="intent" value="said" />
            <SaidFields
              shape={page.shape}
              choices={choices}
              values={refused('said')?.said ?? said}
              errors={refused('said')?.errors}
            />
            <div>
              <button className="button button--main">Save</button>
            </div>
          </Form>
        </details>
        {!page.removed && (
          <ReasonForm
            label="Remove this outline"
            intent="remove"
            explain="It leaves the findings. File and line stay in the case, with the reason beside them."
            error={refused('remove')?.errors.reason}
          />
        )}
      </Sheet>
    </Page>
  );
}
