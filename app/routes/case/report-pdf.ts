import { createReadableStreamFromReadable, type LoaderFunctionArgs } from '@remix-run/node';
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { loadCase } from '~/app/case.server';
import { inlineAs } from '~/app/photos/served-name';
import { reportOf } from '~/app/work/report.server';

/** The report of the case as it stands, as one PDF. */
export async function loader({ params }: LoaderFunctionArgs): Promise<Response> {
  const loaded = loadCase(params);
  const path = await reportOf(loaded);
  const { size } = await stat(path);
  const number = String(loaded.record.fields.number ?? 'case').replace(/[^\w.-]+/g, '-');
  return new Response(createReadableStreamFromReadable(createReadStream(path)), {
    headers: {
      'Content-Type': 'application/pdf',
      'Content-Length': String(size),
      'Content-Disposition': inlineAs(`${number}-report-${loaded.head.slice(0, 8)}.pdf`),
      'Cache-Control': 'no-store',
      'X-Content-Type-Options': 'nosniff',
    },
  });
}
