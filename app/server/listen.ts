import type { Express } from 'express';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';

const LAST_TRIED = 40;

function listenOnce(app: Express, port: number): Promise<Server> {
  return new Promise((resolve, reject) => {
    const server = app.listen(port, '127.0.0.1');
    server.once('listening', () => resolve(server));
    server.once('error', reject);
  });
}

const isTaken = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && error.code === 'EADDRINUSE';

/** Listens on 127.0.0.1 at `port`, or, unless it is fixed, at the next free one. */
export async function listen(
  app: Express,
  port: number,
  fixed: boolean,
): Promise<{ server: Server; port: number }> {
  for (let candidate = port; ; candidate++) {
    try {
      const server = await listenOnce(app, candidate);
      return { server, port: (server.address() as AddressInfo).port };
    } catch (error) {
      if (!isTaken(error)) throw error;
      if (fixed) throw new Error(`Port ${port} is taken. Set FLANGEMARK_PORT to another one.`);
      if (candidate >= port + LAST_TRIED) throw new Error(`Ports ${port} to ${candidate} are all taken.`);
    }
  }
}

/** Stops on SIGINT and SIGTERM: answers what is under way, takes nothing new. */
export function stopGracefully(server: Server, afterwards: () => Promise<void>): void {
  const GRACE_MS = 5000;
  let stopping = false;
  const stop = () => {
    if (stopping) return;
    stopping = true;
    server.close(() => void afterwards().finally(() => process.exit(0)));
    server.closeIdleConnections();
    setTimeout(() => server.closeAllConnections(), GRACE_MS).unref();
  };
  process.on('SIGINT', stop);
  process.on('SIGTERM', stop);
}
