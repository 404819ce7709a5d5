import { parentPort } from 'node:worker_threads';
import { loadCase } from '~/app/case.server';
import { findingOptions } from '~/app/findings/case-findings.server';
import { assess } from '~/lib/explanations/assess';
import type { Job, JobReply, JobRequest, JobResults } from './jobs';

const work: { readonly [K in Job['kind']]: (job: Extract<Job, { kind: K }>) => Promise<JobResults[K]> } = {
  async assess({ caseId }) {
    const loaded = loadCase({ caseId });
    return assess({ record: loaded.record, ...findingOptions(loaded) });
  },
};

parentPort?.on('message', async ({ id, job }: JobRequest) => {
  const reply = (message: JobReply): void => parentPort?.postMessage(message);
  try {
    reply({ id, ok: true, result: await work[job.kind](job) });
  } catch (error) {
    reply({ id, ok: false, message: error instanceof Error ? error.message : String(error) });
  }
});
