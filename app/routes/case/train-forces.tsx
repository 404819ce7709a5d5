import { json, type LoaderFunctionArgs } from '@remix-run/node';
import { Link, useLoaderData } from '@remix-run/react';
import { loadCase } from '~/app/case.server';
import { FigureImage } from '~/app/components/FigureImage';
import { FindingList } from '~/app/components/findings/FindingList';
import { Page } from '~/app/components/Page';
import { Sheet } from '~/app/components/Sheet';
import { simulationFigureRef } from '~/app/figures/simulation.server';
import { findingView } from '~/app/findings/view.server';
import { simulationOf } from '~/app/work/simulation.server';
import { simulatedFindings } from '~/lib/findings/train/simulated-forces';

export async function loader({ params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  const simulated = await simulationOf(loaded);
  return json({
    caseId: loaded.caseId,
    gear: simulated.kind === 'simulated' ? simulated.gear : null,
    figure: await simulationFigureRef(loaded),
    findings: simulatedFindings(simulated).map((finding) => findingView(loaded, finding)),
  });
}

export default function TrainForces() {
  const { caseId, figure, findings, gear } = useLoaderData<typeof loader>();
  return (
    <Page
      title="Coupler forces through the run"
      intro="The train driven through its recorder run, every coupler with its slack and friction. An estimate with stated assumptions, up to the POD."
      actions={<Link to={`/cases/${caseId}/train#recorder`}>Back to the train</Link>}
    >
      <Sheet title="At the first derailed vehicle">
        {figure ? (
          <FigureImage figure={figure} />
        ) : (
          <p className="soft">Not simulated yet: what it needs is named below.</p>
        )}
        {gear && (
          <p className="small soft">
            Draft gear: {gear}. Choose another kind under{' '}
            <Link to={`/cases/${caseId}/train#placing`}>
              track under the train, draft gear and end of train
            </Link>
            .
          </p>
        )}
      </Sheet>
      <Sheet title="What follows">
        <FindingList findings={findings} empty="" />
      </Sheet>
    </Page>
  );
}
