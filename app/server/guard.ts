import type { RequestHandler, Response } from 'express';

/** The app has no accounts, so whoever reaches it can change evidence: only this machine may. */
const LOOPBACK = /^(127\.0\.0\.1|localhost|\[::1\])(:\d{1,5})?$/i;

function refusePage(response: Response, title: string, why: string): void {
  response
    .status(403)
    .type('html')
    .send(
      `<!doctype html><html lang="en"><meta charset="utf-8"><title>${title}</title>` +
        `<meta name="viewport" content="width=device-width, initial-scale=1">` +
        `<h1>${title}</h1><p>${why}</p><p>Nothing was changed.</p></html>`,
    );
}

/**
 * Refuses a request that names another host. A page elsewhere can have its own name resolve to
 * this machine (DNS rebinding); its requests then carry that name.
 */
export const onlyLoopbackHost: RequestHandler = (request, response, next) => {
  if (LOOPBACK.test(request.headers.host ?? '')) return next();
  refusePage(
    response,
    'This address is not served',
    'Flangemark answers on this machine only. Open the address it printed when it started, such as ' +
      'http://127.0.0.1:8471.',
  );
};

/** Refuses a change that a page of another origin asked for. */
export const onlySameOriginChanges: RequestHandler = (request, response, next) => {
  if (request.method === 'GET' || request.method === 'HEAD') return next();
  const { origin, host } = request.headers;
  const site = request.headers['sec-fetch-site'];
  // A client that is no browser sends neither header and carries no one else's page.
  const sameOrigin =
    origin === undefined
      ? site === undefined || site === 'same-origin' || site === 'none'
      : origin.toLowerCase() === `http://${host?.toLowerCase()}`;
  if (sameOrigin) return next();
  refusePage(
    response,
    'This change was refused',
    'The form was sent from another site. Open Flangemark at the address it printed and enter it there.',
  );
};
