import { vitePlugin as remix } from '@remix-run/dev';
import { defineConfig } from 'vite';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('.', import.meta.url));

export default defineConfig({
  publicDir: 'app/public',
  resolve: {
    alias: [{ find: /^~\/(app|db|lib|tests)\//, replacement: `${root}$1/` }],
  },
  plugins: [
    ...(process.env.VITEST
      ? []
      : [
          remix({
            appDirectory: 'app',
            future: {
              v3_fetcherPersist: true,
              v3_relativeSplatPath: true,
              v3_throwAbortReason: true,
              v3_lazyRouteDiscovery: true,
              v3_singleFetch: true,
              v3_routeConfig: true,
            },
          }),
        ]),
  ],
  ssr: { external: ['better-sqlite3', 'sharp', 'pdfkit'] },
  test: {
    // Loading the modules anew for every file took longer than the tests. Projects stay apart.
    poolOptions: { forks: { isolate: false }, threads: { minThreads: 1, maxThreads: 1 } },
    // None is timed: a test that only waits for its share of a busy machine has not failed.
    testTimeout: 120_000,
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
          exclude: ['tests/browser/**', 'tests/**/*.replaced.test.ts'],
          environment: 'node',
        },
      },
      {
        extends: true,
        test: {
          // Tests that put another module in the place of one.
          name: 'replaced',
          include: ['tests/**/*.replaced.test.ts'],
          environment: 'node',
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          environment: 'node',
          // A pool of its own, so that it runs beside the other tests: a browser mostly waits.
          pool: 'threads',
          hookTimeout: 240_000,
        },
      },
    ],
  },
} as Parameters<typeof defineConfig>[0]);
