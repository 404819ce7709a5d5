import { json, type LinksFunction, type LoaderFunctionArgs, type MetaFunction } from '@remix-run/node';
import {
  Link,
  Links,
  Meta,
  Outlet,
  Scripts,
  ScrollRestoration,
  useRouteError,
  useRouteLoaderData,
} from '@remix-run/react';
import type { ReactNode } from 'react';
import { Cover } from './components/Cover';
import { Problem } from './components/Problem';
import { readLook } from './look.server';
import { useNonce } from './nonce';
import styles from './styles/index.css?url';

export const links: LinksFunction = () => [
  { rel: 'stylesheet', href: styles },
  { rel: 'icon', href: '/mark.svg', type: 'image/svg+xml' },
];

export const meta: MetaFunction = () => [{ title: 'Flangemark' }];

export async function loader({ request }: LoaderFunctionArgs) {
  return json({ look: await readLook(request) });
}

export function Layout({ children }: { readonly children: ReactNode }) {
  const nonce = useNonce();
  const look = useRouteLoaderData<typeof loader>('root')?.look ?? 'auto';
  return (
    <html lang="en" data-look={look}>
      <head>
        <meta charSet="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <Meta />
        <Links />
      </head>
      <body>
        <a className="skip" href="#content">
          Skip to the content
        </a>
        <Cover look={look} />
        {children}
        <footer className="foot">
          <div className="foot__inner">
            Results are aids to judgement; the railroad’s own rules and the regulator decide.{' '}
            <Link to="/safety">Safety and scope</Link>
          </div>
        </footer>
        <ScrollRestoration nonce={nonce} />
        <Scripts nonce={nonce} />
      </body>
    </html>
  );
}

export default function App() {
  return <Outlet />;
}

export function ErrorBoundary() {
  return (
    <main id="content" className="page">
      <div className="page__inner">
        <Problem error={useRouteError()} />
      </div>
    </main>
  );
}
