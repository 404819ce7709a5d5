import { parentPort } from 'node:worker_threads';
import { loadCase, type LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { caseContext, caseFindings, findingOptions } from '~/app/findings/case-findings.server';
import { computeFeatures } from '~/app/traces/compute-features.server';
import { readRecorderRun } from '~/db/recorder';
import { assess, type Assessment } from '~/lib/explanations/assess';
import {
  simulatedFindings,
  simulatedForces,
  type NotSimulated,
  type SimulatedForces,
} from '~/lib/findings/train/simulated-forces';
import type { Job, JobReply, JobRequest, JobResults } from './jobs';
import { writeReport } from './report-job.server';

/** Made once per state of the case: the report is most often asked for after the explanations. */
const assessed = (loaded: LoadedCase): Assessment =>
  derived(loaded, 'assessment', () => assess({ record: loaded.record, ...findingOptions(loaded) }));

const simulated = (loaded: LoadedCase): SimulatedForces | NotSimulated =>
  derived(loaded, 'simulated forces', () => {
    const context = caseContext(loaded);
    const runId = context.recorder?.runId;
    return simulatedForces(context, runId === undefined ? {} : readRecorderRun(loaded.db, runId));
  });

/** In the report the simulation stands among the findings. */
function reported(loaded: LoadedCase): Promise<string> {
  const assessment = assessed(loaded);
  const forces = simulated(loaded);
  const findings = [...assessment.findings, ...simulatedFindings(forces)];
  return writeReport(loaded, { ...assessment, findings }, forces.kind === 'simulated' ? forces : null);
}

async function run(job: Job): Promise<JobResults[Job['kind']]> {
  const loaded = loadCase({ caseId: job.caseId });
  switch (job.kind) {
    case 'assess':
      return assessed(loaded);
    case 'report':
      return reported(loaded);
    case 'simulate':
      return simulated(loaded);
    case 'outline': {
      const trace = loaded.record.traces.find(({ id }) => id === job.traceId);
      if (trace === undefined) throw new Error('There is no such outline in this case.');
      const features = computeFeatures(loaded.record, trace);
      // What the outline gives the findings is kept now, so that no page has to wait for it.
      caseFindings(loaded);
      return features;
    }
  }
}

parentPort?.on('message', async ({ id, job }: JobRequest) => {
  const reply = (message: JobReply): void => parentPort?.postMessage(message);
  try {
    reply({ id, ok: true, result: await run(job) });
  } catch (error) {
    reply({ id, ok: false, message: error instanceof Error ? error.message : String(error) });
  }
});
