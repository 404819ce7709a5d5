import { json } from '@remix-run/node';
import { Link, useLoaderData } from '@remix-run/react';
import { database } from '~/app/case.server';
import { EntityTable, type TableColumn } from '~/app/components/EntityTable';
import { Page } from '~/app/components/Page';
import { localTime } from '~/app/times';
import { listCases } from '~/db/cases';

const COLUMNS: readonly TableColumn[] = [
  { id: 'occurred', label: 'When' },
  { id: 'where', label: 'Where' },
  { id: 'readings', label: 'Readings', number: true },
  { id: 'photos', label: 'Photos', number: true },
];

export function loader() {
  const rows = listCases(database()).map((each) => ({
    id: each.id,
    name: `${each.number} · ${each.title}`,
    href: `/cases/${each.id}/overview`,
    cells: {
      occurred: each.occurredAt ? localTime(each.occurredAt) : 'not said',
      where: [each.railroad, each.subdivision, each.milepost && `MP ${each.milepost}`]
        .filter(Boolean)
        .join(', '),
      readings: String(each.readings),
      photos: String(each.photos),
    },
  }));
  return json({ rows });
}

export default function Cases() {
  const { rows } = useLoaderData<typeof loader>();
  return (
    <Page
      title="Cases"
      intro="One book per derailment: what was read on the ground, and what it will bear."
      actions={
        <Link to="/cases/new" className="button button--main">
          Open a new case
        </Link>
      }
    >
      <section className="sheet" aria-label="List of cases">
        <EntityTable
          caption="Cases, the one changed last first"
          nameLabel="Case"
          columns={COLUMNS}
          rows={rows}
          empty="No case yet. Open a new one to start."
        />
      </section>
    </Page>
  );
}
