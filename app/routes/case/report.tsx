import { json, redirect, type ActionFunctionArgs, type LoaderFunctionArgs } from '@remix-run/node';
import { Form, Link, useActionData, useLoaderData } from '@remix-run/react';
import { loadCase } from '~/app/case.server';
import { LabelledText } from '~/app/components/LabelledText';
import { Page } from '~/app/components/Page';
import { Sheet } from '~/app/components/Sheet';
import { reportParts } from '~/app/report/parts.server';
import { saveWords } from '~/app/report/save-words.server';
import { WORDS } from '~/app/report/words';
import { readActor } from '~/app/who.server';
import { assessmentOf } from '~/app/work/assessment.server';
import { chosenExplanation, determinationCheck } from '~/lib/explanations/determination';
import { plain } from '~/lib/explanations/sentences';

export async function loader({ params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  const { argument } = await assessmentOf(loaded);
  const check = determinationCheck(argument, chosenExplanation(loaded.record));
  return json({
    caseId: loaded.caseId,
    words: loaded.record.narrative,
    parts: reportParts(loaded),
    check: { kind: check.kind, text: plain(check.sentence) },
  });
}

export async function action({ request, params }: ActionFunctionArgs) {
  const loaded = loadCase(params);
  const actor = await readActor(request, loaded.record);
  const refused = saveWords(loaded, await request.formData(), actor);
  if (refused) return json(refused, { status: 422 });
  return redirect(`/cases/${loaded.caseId}/report`);
}

const TITLES = {
  carried: 'They agree.',
  notCarried: 'They differ.',
  against: 'They differ.',
  notWeighed: 'Not weighed.',
  notSaid: 'Not compared.',
} as const;

export default function Report() {
  const { caseId, words, parts, check } = useLoaderData<typeof loader>();
  const refused = useActionData<typeof action>();
  const differs = check.kind === 'against' || check.kind === 'notCarried';
  return (
    <Page
      title="Report"
      intro="One PDF of the case as it stands: every sentence leads to a reading, every reading to who took it, when and with what."
      actions={
        // A plain link: the PDF is a file of its own, not a screen of the app.
        <a
          className="button button--main"
          href={`/cases/${caseId}/report.pdf`}
          target="_blank"
          rel="noreferrer"
        >
          Open the PDF
        </a>
      }
    >
      <Sheet title="Your words">
        <Form method="post" className="form" noValidate>
          {WORDS.map(({ id, label, help, rows, most }) => (
            <LabelledText
              key={id}
              id={id}
              name={id}
              label={label}
              help={help}
              rows={rows}
              maxLength={most}
              value={refused?.entered[id] ?? words[id]}
              error={refused?.errors[id]}
            />
          ))}
          <div>
            <button className="button">Keep these words</button>
          </div>
        </Form>
      </Sheet>
      <Sheet title="Determination and evidence">
        <p className={differs ? 'note note--care' : 'note'}>
          <strong>{TITLES[check.kind]}</strong> {check.text}
        </p>
        <p className="soft">
          The explanation held against the evidence is the one that{' '}
          <Link to={`/cases/${caseId}/explanations`}>Explanations</Link> lets stand alone. The report prints
          this note below your determination.
        </p>
      </Sheet>
      <Sheet title="What the report will contain">
        <div className="table-wrap" tabIndex={0} role="region" aria-label="Parts of the report">
          <table>
            <thead>
              <tr>
                <th scope="col">Part</th>
                <th scope="col">Holds</th>
                <th scope="col">Gaps</th>
              </tr>
            </thead>
            <tbody>
              {parts.map(({ name, holds, gap, screen }) => (
                <tr key={name}>
                  <th scope="row">
                    <Link to={`/cases/${caseId}/${screen}`}>{name}</Link>
                  </th>
                  <td>{holds || 'nothing yet'}</td>
                  <td>{gap || 'none'}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </Sheet>
    </Page>
  );
}
