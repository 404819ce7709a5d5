import { parentPort } from 'node:worker_threads';
import { loadCase, type LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { findingOptions } from '~/app/findings/case-findings.server';
import { computeFeatures } from '~/app/traces/compute-features.server';
import { assess, type Assessment } from '~/lib/explanations/assess';
import type { Job, JobReply, JobRequest, JobResults } from './jobs';
import { writeReport } from './report-job.server';

/** Made once per state of the case: the report is most often asked for after the explanations. */
const assessed = (loaded: LoadedCase): Assessment =>
  derived(loaded, 'assessment', () => assess({ record: loaded.record, ...findingOptions(loaded) }));

async function run(job: Job): Promise<JobResults[Job['kind']]> {
  const loaded = loadCase({ caseId: job.caseId });
  switch (job.kind) {
    case 'assess':
      return assessed(loaded);
    case 'report':
      return writeReport(loaded, assessed(loaded));
    case 'outline': {
      const trace = loaded.record.traces.find(({ id }) => id === job.traceId);
      if (trace === undefined) throw new Error('There is no such outline in this case.');
      return computeFeatures(loaded.record, trace);
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
