import { json, redirect, type ActionFunctionArgs, type LoaderFunctionArgs } from '@remix-run/node';
import { Link, useActionData, useLoaderData } from '@remix-run/react';
import { loadCase } from '~/app/case.server';
import { decibansText } from '~/app/components/explanations/decibans';
import { FactSheet } from '~/app/components/explanations/FactSheet';
import { ForAndAgainst } from '~/app/components/explanations/ForAndAgainst';
import { OtherExplanation } from '~/app/components/explanations/OtherExplanation';
import { Phrases } from '~/app/components/explanations/Phrases';
import { StandingForm } from '~/app/components/explanations/StandingForm';
import { Opened } from '~/app/components/explanations/Opened';
import { Standing } from '~/app/components/explanations/Standing';
import { FigureImage } from '~/app/components/FigureImage';
import { Page } from '~/app/components/Page';
import { Sheet } from '~/app/components/Sheet';
import { argumentFigureRef } from '~/app/figures/argument.server';
import { keepStanding } from '~/app/explanations/standing.server';
import { argumentView } from '~/app/explanations/view.server';
import { readActor } from '~/app/who.server';

export async function loader({ request, params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  const open = new URL(request.url).searchParams.get('open');
  const [view, bars] = await Promise.all([argumentView(loaded, open), argumentFigureRef(loaded)]);
  return json({ caseId: loaded.caseId, view, bars });
}

export async function action({ request, params }: ActionFunctionArgs) {
  const loaded = loadCase(params);
  const form = await request.formData();
  const refused = keepStanding(loaded, form, await readActor(request, loaded.record));
  if (refused) return json({ refused }, { status: 422 });
  return redirect(`/cases/${loaded.caseId}/explanations${new URL(request.url).search}`);
}

const TITLE = {
  notMeasured: 'Nothing measured yet',
  notDistinguishable: 'Not distinguishable on this evidence',
  distinguishable: 'What the evidence supports',
} as const;

export default function Explanations() {
  const { caseId, view, bars } = useLoaderData<typeof loader>();
  const refused = useActionData<typeof action>()?.refused ?? null;
  const open = view.open ?? view.explanations[0]?.id;
  const [low, middle, high] = view.widened.lead;
  return (
    <Page
      title="Explanations"
      intro="Readings show facts; facts are expected under some explanations and not under others. The weights compare explanations in pairs. They are not the chance that anyone is right, and no cause is stated here."
      actions={
        <Link className="button" to={`/cases/${caseId}/explanations/judgements`}>
          Judgements behind the weights
        </Link>
      }
    >
      <Sheet title={TITLE[view.kind]} id="verdict">
        <p className="lead">
          <Phrases line={view.verdict} />
        </p>
        {view.because.length > 1 && (
          <ul>
            {view.because.map((why) => (
              <li key={why}>{why}</li>
            ))}
          </ul>
        )}
        {view.caveats.map((caveat, index) => (
          <p key={index} className="note note--care">
            <Phrases line={caveat} />
          </p>
        ))}
        {view.lopsided && (
          <p className="note note--care">
            <Phrases line={view.lopsided} />
          </p>
        )}
        <details className="disclose">
          <summary>Pair by pair</summary>
          <ul className="stack">
            {view.pairs.map((pair, index) => (
              <li key={index}>
                <Phrases line={pair} />
              </li>
            ))}
          </ul>
          <p className="small soft">{view.words}</p>
        </details>
        {view.baseline && (
          <details className="disclose">
            <summary>With the judgements as delivered</summary>
            <p>
              <Phrases line={view.baseline} />
            </p>
            <ul>
              {view.adjusted.map(({ what, from, to, reason }) => (
                <li key={what}>
                  {what}: {from} changed to {to}. {reason}
                </li>
              ))}
            </ul>
          </details>
        )}
      </Sheet>

      <Sheet title="For and against">
        <p className="soft">
          Decibans against the background of ordinary running: 10 is ten times, 20 is a hundred times.
        </p>
        <FigureImage figure={bars} />
        <ul className="plain-list">
          {view.explanations.map((explanation) => (
            <Opened
              key={explanation.id}
              name={explanation.id}
              anchor={`explanation-${explanation.id}`}
              title={explanation.name}
              aside={<strong>{decibansText(explanation.decibans)} decibans</strong>}
            >
              {explanation.id === open && <ForAndAgainst explanation={explanation} />}
            </Opened>
          ))}
        </ul>
      </Sheet>

      <Sheet title="Hard to square with the leading explanation">
        {view.contradictions.length === 0 ? (
          <p>No recorded fact speaks against the leading explanation by 5 decibans or more.</p>
        ) : (
          <ul className="stack">
            {view.contradictions.map((line, index) => (
              <li key={index}>
                <Phrases line={line} />
              </li>
            ))}
          </ul>
        )}
      </Sheet>

      <Sheet title="What would change the answer">
        {view.deciding.length === 0 ? (
          <p>
            Nothing taken singly: {view.tried.witnesses} witnesses and {view.tried.readings} readings were
            left out one at a time and {view.tried.facts} facts turned round, and the order of the first two
            stayed with a lead of 10 decibans or more.
          </p>
        ) : (
          <ul className="stack">
            {view.deciding.map((line, index) => (
              <li key={index}>
                <Phrases line={line} />
              </li>
            ))}
          </ul>
        )}
        <p>
          With every judgement moved by up to a factor of two, in {view.widened.draws} draws, the leader stays
          ahead in {Math.round(100 * view.widened.staysAhead)} % of them; its lead over the next runs from{' '}
          {decibansText(low)} to {decibansText(high)} decibans, {decibansText(middle)} in the middle.
        </p>
      </Sheet>

      <Sheet title="Not looked at, and would help most">
        {view.lookNext.length === 0 ? (
          <p>Every witness of every explanation has a record.</p>
        ) : (
          <ol className="stack">
            {view.lookNext.map((line, index) => (
              <li key={index}>
                <Phrases line={line} />
              </li>
            ))}
          </ol>
        )}
        {view.notLookedAtAll > view.lookNext.length && (
          <p className="soft">
            The first {view.lookNext.length} of {view.notLookedAtAll}; each fact below shows all of its
            witnesses.
          </p>
        )}
      </Sheet>

      <Sheet title="Facts and what shows them">
        <ul className="plain-list">
          {view.facts.map(({ id, name, decibans }) => (
            <Opened
              key={id}
              name={id}
              anchor={`fact-${id}`}
              title={name}
              aside={<strong>{decibansText(decibans)} decibans</strong>}
            >
              {view.fact?.id === id && <FactSheet fact={view.fact} />}
            </Opened>
          ))}
        </ul>
      </Sheet>

      <Sheet title="To be excluded, or left standing" id="others">
        <p className="soft">
          The answer is never forced into the four that are weighed. Each of these is excluded with a reason,
          or left standing.
        </p>
        <ul className="plain-list">
          {view.others.map(({ id, name, state, reason }) => (
            <Opened
              key={id}
              name={id}
              anchor={`explanation-${id}`}
              title={name}
              aside={<Standing state={state} reason={reason} />}
            >
              {view.other?.id === id && <OtherExplanation other={view.other} refused={refused} />}
            </Opened>
          ))}
        </ul>
      </Sheet>

      <Sheet title="The investigator’s word on the four" id="determination">
        <p>
          <Phrases line={view.determination} />
        </p>
        <ul className="plain-list">
          {view.standings.map(({ explanation, standing, reason }) => (
            <Opened
              key={explanation}
              name={`word-${explanation}`}
              anchor={`word-${explanation}`}
              title={view.explanations.find(({ id }) => id === explanation)?.name ?? explanation}
              aside={<Standing state={standing} reason={reason} />}
            >
              {open === `word-${explanation}` && (
                <StandingForm
                  explanation={explanation}
                  standing={standing === 'notSaid' ? 'notConsidered' : standing}
                  reason={reason}
                  refused={refused}
                />
              )}
            </Opened>
          ))}
        </ul>
      </Sheet>
    </Page>
  );
}
