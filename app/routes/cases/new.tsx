import { json, redirect, type ActionFunctionArgs, type MetaFunction } from '@remix-run/node';
import { Link, useActionData } from '@remix-run/react';
import { database } from '~/app/case.server';
import { EntityForm } from '~/app/components/EntityForm';
import { Page } from '~/app/components/Page';
import { readRecord } from '~/app/entities/save.server';
import { NOBODY } from '~/app/who.server';
import { createCase } from '~/db/cases';
import { caseKind } from '~/lib/case/kinds';

export const meta: MetaFunction = () => [{ title: 'New case · Flangemark' }];

const START = { units: 'us', ruleSet: 'us-49cfr213' };

export async function action({ request }: ActionFunctionArgs) {
  const sent = readRecord(await request.formData(), caseKind, null);
  if (!sent.ok) return json(sent, { status: 422 });
  return redirect(`/cases/${createCase(database(), sent.fields, NOBODY)}/scene`);
}

export default function NewCase() {
  const answer = useActionData<typeof action>();
  return (
    <Page
      title="New case"
      intro="Number and title are enough to start; the rest can follow when it is known."
    >
      <section className="sheet" aria-label="The case">
        <EntityForm
          kind={caseKind}
          values={answer?.values ?? START}
          errors={answer?.errors}
          submit="Open this case"
          aside={<Link to="/">Back to the list</Link>}
        />
      </section>
    </Page>
  );
}
