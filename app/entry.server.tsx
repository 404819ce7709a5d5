import type { AppLoadContext, EntryContext } from '@remix-run/node';
import { createReadableStreamFromReadable } from '@remix-run/node';
import { RemixServer } from '@remix-run/react';
import { PassThrough } from 'node:stream';
import { renderToPipeableStream } from 'react-dom/server';
import { NonceContext } from './nonce';

declare module '@remix-run/server-runtime' {
  interface AppLoadContext {
    readonly nonce: string;
  }
}

const RENDER_TIMEOUT_MS = 15_000;
export const streamTimeout = RENDER_TIMEOUT_MS - 1000;

export default function handleRequest(
  request: Request,
  status: number,
  headers: Headers,
  remixContext: EntryContext,
  loadContext: AppLoadContext,
): Promise<Response> {
  return new Promise((resolve, reject) => {
    let answered = false;
    const { pipe, abort } = renderToPipeableStream(
      <NonceContext.Provider value={loadContext.nonce}>
        <RemixServer context={remixContext} url={request.url} nonce={loadContext.nonce} />
      </NonceContext.Provider>,
      {
        nonce: loadContext.nonce,
        onShellReady() {
          answered = true;
          const body = new PassThrough();
          headers.set('Content-Type', 'text/html; charset=utf-8');
          headers.set('Cache-Control', 'no-store');
          resolve(new Response(createReadableStreamFromReadable(body), { headers, status }));
          pipe(body);
        },
        onShellError: reject,
        onError(error) {
          // Before the shell is ready, onShellError reports it.
          if (answered) console.error(error);
        },
      },
    );
    setTimeout(abort, RENDER_TIMEOUT_MS).unref();
  });
}
