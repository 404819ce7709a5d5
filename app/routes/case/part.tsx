import { Outlet, useRouteError } from '@remix-run/react';
import { Problem } from '~/app/components/Problem';

/** Stands between the case and its screens so that an error in one leaves the case's tabs in place. */
export default function CasePart() {
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
