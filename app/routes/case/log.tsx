import { json, type LoaderFunctionArgs } from '@remix-run/node';
import { Link, useLoaderData } from '@remix-run/react';
import { loadCase } from '~/app/case.server';
import { Page } from '~/app/components/Page';
import { Sheet } from '~/app/components/Sheet';
import { derived } from '~/app/derived.server';
import { files } from '~/app/files.server';
import { entryInWords, type LoggedEntry } from '~/app/log/wording.server';
import { moment } from '~/app/times';
import { readLog } from '~/db/log';
import { verifyCase } from '~/db/verify';

const ENTRIES = 25;

export function loader({ request, params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  const { db, caseId, record, head } = loaded;
  const query = new URL(request.url).searchParams;
  const asked = query.get('before') ?? '';
  const before = /^\d{1,15}$/.test(asked) ? Number(asked) : undefined;
  const check = (photoFiles: boolean) => ({
    ...verifyCase(db, files(), caseId, { photoFiles }),
    photoFiles,
    at: moment(new Date().toISOString()),
  });
  // Checked once per state of the case, without reading every photo; the link checks all of it again.
  const chain = query.has('check') ? check(true) : derived(loaded, 'log check', () => check(false));
  const entries = readLog(db, caseId, { before, limit: ENTRIES + 1 });
  const shown = entries.slice(0, ENTRIES);
  return json({
    head,
    chain,
    newest: before === undefined,
    entries: shown.map((entry) => entryInWords(record, entry)),
    older: entries.length > ENTRIES ? (shown.at(-1)?.seq ?? null) : null,
  });
}

function Changes({ entry }: { readonly entry: LoggedEntry }) {
  if (entry.changes.length === 0) return null;
  return (
    <ul className="plain-list">
      {entry.changes.map(({ label, before, after }, index) => (
        <li key={index}>
          <span className="soft">{label}:</span>{' '}
          {before && (
            <>
              <del>{before}</del> <span aria-hidden="true">→</span>{' '}
            </>
          )}
          <ins>{after || '(empty)'}</ins>
        </li>
      ))}
      {entry.more > 0 && <li className="soft">and {entry.more} more</li>}
    </ul>
  );
}

export default function Log() {
  const { head, chain, newest, entries, older } = useLoaderData<typeof loader>();
  return (
    <Page
      title="Log"
      intro="Every change of this case, who made it and when. Entries are chained by their hashes and cannot be edited."
    >
      <Sheet title="The chain">
        <div className={chain.ok ? 'note note--good' : 'note note--bad'} role={chain.ok ? 'status' : 'alert'}>
          {chain.ok ? (
            <>
              <strong>Unbroken.</strong> Every entry was computed anew and matches, and so does everything it
              speaks of: readings, records, outlines, recorder samples
              {chain.photoFiles
                ? ', and every file with every photo'
                : ' and files; of photos only that they are there'}{' '}
              (checked {chain.at}).
            </>
          ) : (
            <>
              <strong>Broken.</strong> Something was changed from outside (checked {chain.at}):
              <ul>
                {chain.problems.slice(0, 20).map((problem) => (
                  <li key={problem}>{problem}</li>
                ))}
              </ul>
            </>
          )}
        </div>
        <p>
          Newest hash: <span className="hash">{head}</span>
        </p>
        <p className="soft">
          Write this hash down somewhere outside this machine: as long as it can be reached from the first
          entry, nothing before it was changed.
        </p>
        <p>
          <Link to="?check=now" className="button button--small">
            Check again now
          </Link>{' '}
          <span className="soft">This reads every photo too.</span>
        </p>
      </Sheet>
      <Sheet title={newest ? 'Newest entries' : 'Older entries'}>
        <ol className="log">
          {entries.map((entry) => (
            <li key={entry.seq} className="log__entry">
              <p>
                <strong>{entry.what}</strong>
              </p>
              <p className="small soft">
                No. {entry.seq} · {entry.at} · entered as {entry.who} ·{' '}
                <span className="hash">{entry.hash.slice(0, 12)}</span>
              </p>
              <Changes entry={entry} />
            </li>
          ))}
        </ol>
        <nav className="pager" aria-label="Pages of the log">
          {!newest && <Link to="?">Newest</Link>}
          {older !== null && <Link to={`?before=${older}`}>Older →</Link>}
        </nav>
      </Sheet>
    </Page>
  );
}
