import { json, type LoaderFunctionArgs } from '@remix-run/node';
import { Link, useLoaderData } from '@remix-run/react';
import { loadCase } from '~/app/case.server';
import { Page } from '~/app/components/Page';
import { Sheet } from '~/app/components/Sheet';
import { missingParts } from '~/app/overview/missing.server';
import { notFoundYet } from '~/app/overview/not-found-yet.server';
import { summaryFacts } from '~/app/overview/summary.server';
import { caseKind } from '~/lib/case/kinds';

export function loader({ params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  const { narrative } = loaded.record.fields;
  return json({
    caseId: loaded.caseId,
    name: caseKind.describe(loaded.record.fields),
    narrative: typeof narrative === 'string' ? narrative : '',
    facts: summaryFacts(loaded),
    parts: missingParts(loaded),
    waiting: notFoundYet(loaded),
  });
}

export default function Overview() {
  const { caseId, name, narrative, facts, parts, waiting } = useLoaderData<typeof loader>();
  return (
    <Page
      title="Overview"
      intro="What is known so far, and what is still to be recorded before it is gone."
      actions={
        <>
          <Link className="button" to={`/cases/${caseId}/explanations`}>
            Explanations
          </Link>
          <Link className="button" to={`/cases/${caseId}/report`}>
            Report
          </Link>
        </>
      }
    >
      <Sheet title={name}>
        {narrative && <p style={{ whiteSpace: 'pre-line' }}>{narrative}</p>}
        <dl className="facts">
          {facts.map(({ label, text, href }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{href ? <Link to={href}>{text}</Link> : text}</dd>
            </div>
          ))}
        </dl>
      </Sheet>
      <Sheet title="Still missing">
        <p className="soft">
          Not every line applies to every case. What speaks against the first idea is worth as much as what
          speaks for it.
        </p>
        <ul className="cards">
          {parts.map(({ screen, name: part, missing, read, of }) => (
            <li key={screen} className="sheet">
              <h3>
                <Link to={`/cases/${caseId}/${screen}`}>{part}</Link>
              </h3>
              {of > 0 && (
                <p className="small soft">
                  {screen === 'photos'
                    ? `${read} of ${of} with a caption`
                    : `${read} of ${of} kinds of reading taken at least once`}
                </p>
              )}
              {missing.length === 0 ? (
                <p className="chip chip--good">Nothing missing</p>
              ) : (
                <ul className="stack">
                  {missing.map((line) => (
                    <li key={line}>{line}</li>
                  ))}
                </ul>
              )}
            </li>
          ))}
        </ul>
      </Sheet>
      {waiting.length > 0 && (
        <Sheet title="Cannot be worked out yet">
          <ul className="findings">
            {waiting.map(({ title, missing, href }) => (
              <li key={title} className="finding">
                <Link to={href}>{title}</Link>
                <span className="soft">Needs {missing}</span>
              </li>
            ))}
          </ul>
        </Sheet>
      )}
    </Page>
  );
}
