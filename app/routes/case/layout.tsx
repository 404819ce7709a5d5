import { json, type LoaderFunctionArgs, type MetaFunction } from '@remix-run/node';
import { Link, Outlet, useLoaderData, useLocation, useRouteError } from '@remix-run/react';
import { loadCase } from '~/app/case.server';
import { CaseTabs } from '~/app/components/CaseTabs';
import { EnteringAs } from '~/app/components/EnteringAs';
import { Problem } from '~/app/components/Problem';
import { SafetyStrip } from '~/app/components/SafetyStrip';
import { readActor } from '~/app/who.server';
import { standing } from '~/lib/case/current';
import { caseKind } from '~/lib/case/kinds';

export async function loader({ request, params }: LoaderFunctionArgs) {
  const { record } = loadCase(params);
  return json({
    caseId: record.id,
    name: caseKind.describe(record.fields),
    people: standing(record, 'person').map(({ id, fields }) => ({ id, name: String(fields.name) })),
    actor: await readActor(request, record),
  });
}

export const meta: MetaFunction<typeof loader> = ({ data, location }) => {
  const part = location.pathname.split('/')[3] ?? '';
  const heading = part.charAt(0).toUpperCase() + part.slice(1);
  return [{ title: [heading, data?.name, 'Flangemark'].filter(Boolean).join(' · ') }];
};

export default function CaseLayout() {
  const { caseId, name, people, actor } = useLoaderData<typeof loader>();
  const { pathname } = useLocation();
  return (
    <>
      <SafetyStrip />
      <div className="case-head">
        <div className="case-head__inner">
          <div className="case-head__row">
            <div className="case-head__title">
              <Link to={`/cases/${caseId}/overview`}>{name}</Link>
            </div>
            <EnteringAs caseId={caseId} people={people} personId={actor.personId} />
          </div>
          <CaseTabs caseId={caseId} path={pathname} />
        </div>
      </div>
      <Outlet />
    </>
  );
}

export function ErrorBoundary() {
  return (
    <>
      <SafetyStrip />
      <main id="content" className="page">
        <div className="page__inner">
          <Problem error={useRouteError()} />
        </div>
      </main>
    </>
  );
}
