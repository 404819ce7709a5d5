import { useRouteLoaderData } from '@remix-run/react';
import type { Look } from '~/app/looks';
import type { loader } from '~/app/root';

/** The colours chosen for the pages. */
export const useLook = (): Look => useRouteLoaderData<typeof loader>('root')?.look ?? 'auto';
