import { randomBytes } from 'node:crypto';
import type { RequestHandler } from 'express';

/** Sends the security headers and leaves the page's script nonce in `response.locals.nonce`. */
export const securityHeaders =
  (dev: boolean): RequestHandler =>
  (_request, response, next) => {
    const nonce = randomBytes(16).toString('base64');
    response.locals.nonce = nonce;
    // Vite's own reload script has no nonce, and it talks over a websocket.
    const script = dev ? `'unsafe-inline'` : `'nonce-${nonce}'`;
    response.setHeader(
      'Content-Security-Policy',
      [
        `default-src 'self'`,
        `script-src 'self' ${script}`,
        dev ? `style-src 'self' 'unsafe-inline'` : `style-src 'self'`,
        `style-src-attr 'unsafe-inline'`,
        `img-src 'self' data: blob:`,
        `worker-src 'self' blob:`,
        dev ? `connect-src 'self' ws:` : `connect-src 'self'`,
        `object-src 'none'`,
        `base-uri 'none'`,
        `form-action 'self'`,
        `frame-ancestors 'none'`,
      ].join('; '),
    );
    response.setHeader('X-Content-Type-Options', 'nosniff');
    // Not no-referrer: under that policy browsers send "Origin: null" with forms.
    response.setHeader('Referrer-Policy', 'same-origin');
    response.setHeader('Cross-Origin-Opener-Policy', 'same-origin');
    response.setHeader('Cross-Origin-Resource-Policy', 'same-origin');
    response.setHeader('Permissions-Policy', 'geolocation=(self), camera=(self), microphone=()');
    next();
  };
