import { createRequestHandler } from '@remix-run/express';
import type { ServerBuild } from '@remix-run/node';
import express from 'express';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { onlyLoopbackHost, onlySameOriginChanges } from './guard';
import { securityHeaders } from './headers';
import { listen, stopGracefully } from './listen';
import type { Settings } from './settings';

type Pages = {
  readonly build: ServerBuild | (() => Promise<ServerBuild>);
  readonly assets: express.RequestHandler[];
  readonly close: () => Promise<void>;
};

async function builtPages(root: string): Promise<Pages> {
  const client = join(root, 'build', 'client');
  const built: unknown = await import(pathToFileURL(join(root, 'build', 'server', 'index.js')).href);
  return {
    build: built as ServerBuild,
    assets: [
      // Vite puts the hash of the content into these names.
      express.static(join(client, 'assets'), { immutable: true, maxAge: '1y', fallthrough: false }),
      express.static(client, { maxAge: '1h', index: false }),
    ],
    close: () => Promise.resolve(),
  };
}

async function pagesFromSource(root: string): Promise<Pages> {
  const { createServer } = await import('vite');
  const vite = await createServer({ root, server: { middlewareMode: true } });
  return {
    build: () => vite.ssrLoadModule('virtual:remix/server-build') as Promise<ServerBuild>,
    assets: [vite.middlewares],
    close: () => vite.close(),
  };
}

/** Serves the app on loopback and prints the address to open. */
export async function serve(root: string, settings: Settings, dev: boolean): Promise<void> {
  const pages = dev ? await pagesFromSource(root) : await builtPages(root);
  const app = express();
  app.disable('x-powered-by');
  app.use(onlyLoopbackHost, onlySameOriginChanges, securityHeaders(dev));
  const [first, ...others] = pages.assets;
  if (first) app.use(dev ? '/' : '/assets', first);
  for (const handler of others) app.use(handler);
  app.all(
    '*',
    createRequestHandler({
      build: pages.build,
      mode: dev ? 'development' : 'production',
      getLoadContext: (_request, response) => ({ nonce: String(response.locals.nonce) }),
    }),
  );
  const { server, port } = await listen(app, settings.port, settings.portIsFixed);
  stopGracefully(server, pages.close);
  console.log(`Flangemark is ready. Open http://127.0.0.1:${port}  (stop it with Ctrl+C)`);
}
