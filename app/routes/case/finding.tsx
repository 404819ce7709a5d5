import { json, type LoaderFunctionArgs } from '@remix-run/node';
import { Link, useLoaderData } from '@remix-run/react';
import { loadCase, notFound } from '~/app/case.server';
import { FindingLimits } from '~/app/components/findings/FindingLimits';
import { SourceList } from '~/app/components/methods/SourceList';
import { Page } from '~/app/components/Page';
import { Sheet } from '~/app/components/Sheet';
import { caseFindings } from '~/app/findings/case-findings.server';
import { findingPlace } from '~/app/findings/place';
import { findingTrail } from '~/app/findings/trail.server';
import { findingView } from '~/app/findings/view.server';
import { simulationOf } from '~/app/work/simulation.server';
import type { Finding } from '~/lib/findings/finding';
import { simulatedFindings } from '~/lib/findings/train/simulated-forces';

export async function loader({ params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  const named = ({ id }: Finding): boolean => id === params.findingId;
  const finding =
    caseFindings(loaded).find(named) ??
    // Those of the simulation are made in the worker and only when they are asked for.
    (params.findingId?.startsWith('simulated')
      ? simulatedFindings(await simulationOf(loaded)).find(named)
      : undefined);
  if (!finding)
    throw notFound('There is no such finding any more: the readings it came from were changed or taken out.');
  return json({
    place: findingPlace(loaded.record, finding),
    finding: findingView(loaded, finding),
    ...findingTrail(loaded, finding),
  });
}

export default function FindingPage() {
  const { place, finding, method, sources } = useLoaderData<typeof loader>();
  return (
    <Page
      title={finding.title}
      intro="One finding: what came out, by which method, and from which readings."
      actions={<Link to={place}>Beside its readings</Link>}
    >
      <Sheet title="What came out">
        <p className="finding__value">{finding.value}</p>
        <FindingLimits limits={finding.limits} />
        {finding.remarks.map((remark) => (
          <p key={remark} className="soft">
            {remark}
          </p>
        ))}
      </Sheet>
      <Sheet title="The method">
        <p>
          <Link to={`/methods#${method.id}`}>{method.name}</Link>
        </p>
        <p>{method.formula}</p>
        <p className="soft">Holds for: {method.validRange}</p>
        <SourceList sources={method.sources} />
      </Sheet>
      <Sheet title="The readings">
        {sources.length === 0 ? (
          <p className="soft">None yet.</p>
        ) : (
          <div className="table-wrap">
            <table className="as-cards">
              <caption className="visually-hidden">Readings it came from</caption>
              <thead>
                <tr>
                  <th scope="col">Of</th>
                  <th scope="col">What was read</th>
                  <th scope="col">As entered</th>
                </tr>
              </thead>
              <tbody>
                {sources.map(({ href, of, what, text }) => (
                  <tr key={href}>
                    <th scope="row">{of}</th>
                    <td data-label="What was read">{what}</td>
                    <td data-label="As entered">
                      <Link to={href}>{text}</Link>
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        )}
      </Sheet>
    </Page>
  );
}
