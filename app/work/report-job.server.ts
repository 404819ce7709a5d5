import {
  createWriteStream,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import { join, resolve } from 'node:path';
import { z } from 'zod';
import type { LoadedCase } from '~/app/case.server';
import { files } from '~/app/files.server';
import { keepOnDisk } from '~/app/findings/keep.server';
import { recorderMoment } from '~/app/findings/recorder-speed.server';
import { entryInWords } from '~/app/log/wording.server';
import { newId } from '~/db/id';
import { readLog } from '~/db/log';
import { dataDir } from '~/db/open';
import { renditionPath } from '~/db/photo-intake';
import { readRecorderRun } from '~/db/recorder';
import type { Assessment } from '~/lib/explanations/assess';
import type { SimulatedForces } from '~/lib/findings/train/simulated-forces';
import { buildReport } from '~/lib/report/build-report';
import type { LogLine, RecordedRun } from '~/lib/report/input';

/** More entries than a case has. */
const WHOLE_LOG = 1_000_000;

const programVersion = (): string =>
  z.object({ version: z.string() }).parse(JSON.parse(readFileSync('package.json', 'utf8'))).version;

/** The reduced picture of every photo that is in the report, made now where it is not there. */
async function pictures({ record }: LoadedCase): Promise<ReadonlyMap<string, string>> {
  const store = files();
  const found = new Map<string, string>();
  for (const { sha256, removed } of record.photos) {
    if (removed !== null || found.has(sha256)) continue;
    if (!store.has(sha256) && !store.hasDerived(sha256, 'print')) continue;
    found.set(sha256, await renditionPath(store, sha256, 'print'));
  }
  return found;
}

const logLines = ({ db, caseId, record }: LoadedCase): readonly LogLine[] =>
  readLog(db, caseId, { limit: WHOLE_LOG })
    .map((entry) => ({
      seq: entry.seq,
      at: entry.at,
      who: entry.actorName,
      what: entryInWords(record, entry).what,
      hash: entry.hash,
    }))
    .reverse();

/** The run in which the POD is placed, else the first. */
function recorded(loaded: LoadedCase): RecordedRun | null {
  const { db, record } = loaded;
  const placed = recorderMoment(loaded)?.runId;
  const standing = record.recorderRuns.filter(({ removed }) => removed === null);
  const run = standing.find(({ id }) => id === placed) ?? standing[0];
  return run === undefined ? null : { runId: run.id, channels: readRecorderRun(db, run.id) };
}

const KEPT_MS = 60 * 60 * 1000;

/** Printings nobody is likely to be reading any more: a report can always be built again. */
function sweep(folder: string): void {
  for (const name of readdirSync(folder)) {
    const path = join(folder, name);
    if (Date.now() - statSync(path).mtimeMs > KEPT_MS) rmSync(path, { force: true });
  }
}

/** Builds the report of the case as it stands and answers the path of the finished file. */
export async function writeReport(
  loaded: LoadedCase,
  assessment: Assessment,
  simulated: SimulatedForces | null = null,
): Promise<string> {
  const { caseId, head, record } = loaded;
  const folder = resolve(dataDir(), 'derived', 'reports');
  mkdirSync(folder, { recursive: true });
  const path = join(folder, `${caseId}-${head.slice(0, 16)}.pdf`);
  const unfinished = join(folder, `unfinished-${newId()}`);
  const photos = await pictures(loaded);
  try {
    await buildReport(
      {
        record,
        assessment,
        recorder: recorded(loaded),
        simulated,
        keep: keepOnDisk,
        photoFile: (sha256) => photos.get(sha256) ?? null,
        generatedAt: new Date().toISOString(),
        version: programVersion(),
        logHead: head,
        log: logLines(loaded),
      },
      createWriteStream(unfinished, { flags: 'wx' }),
    );
    renameSync(unfinished, path);
  } finally {
    rmSync(unfinished, { force: true });
  }
  sweep(folder);
  return path;
}
