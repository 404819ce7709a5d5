import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { Job, JobReply, JobResults } from './jobs';

type Waiting = { readonly resolve: (result: never) => void; readonly reject: (error: Error) => void };
type Running = { readonly worker: Worker; readonly waiting: Map<number, Waiting> };

// Kept on the global object: while developing, modules are loaded anew on each change.
const kept = globalThis as typeof globalThis & { flangemarkWorker?: Running; flangemarkJobs?: number };

/** The bundle of the server is elsewhere, so the worker is found from where the app was started. */
const ENTRY = join('app', 'work', 'worker.mjs');

function start(): Running {
  const worker = new Worker(join(process.cwd(), ENTRY));
  // A worker without work must not keep the process from ending.
  worker.unref();
  const waiting = new Map<number, Waiting>();
  const giveUp = (why: string): void => {
    for (const { reject } of waiting.values()) reject(new Error(why));
    waiting.clear();
    if (kept.flangemarkWorker?.worker === worker) delete kept.flangemarkWorker;
  };
  worker.on('message', (reply: JobReply) => {
    const asked = waiting.get(reply.id);
    waiting.delete(reply.id);
    if (reply.ok) asked?.resolve(reply.result as never);
    else asked?.reject(new Error(reply.message));
  });
  worker.on('error', (error) => giveUp(error.message));
  worker.on('exit', () => giveUp('The work was interrupted. Load the page again.'));
  return { worker, waiting };
}

/** Runs a job in the one worker thread of this process; jobs wait for each other. */
export function runJob<K extends Job['kind']>(job: Extract<Job, { kind: K }>): Promise<JobResults[K]> {
  const { worker, waiting } = (kept.flangemarkWorker ??= start());
  const id = (kept.flangemarkJobs = (kept.flangemarkJobs ?? 0) + 1);
  return new Promise((resolve, reject) => {
    waiting.set(id, { resolve, reject });
    worker.postMessage({ id, job });
  });
}
