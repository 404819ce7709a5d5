import { json, type LoaderFunctionArgs } from '@remix-run/node';
import { Link, useLoaderData } from '@remix-run/react';
import { useMemo } from 'react';
import { loadCase } from '~/app/case.server';
import { ContactAcross } from '~/app/components/contact/ContactAcross';
import { ContactForm } from '~/app/components/contact/ContactForm';
import { ContactNumbers } from '~/app/components/contact/ContactNumbers';
import { Page } from '~/app/components/Page';
import { Sheet } from '~/app/components/Sheet';
import { stand } from '~/app/contact/stand';
import { contactView } from '~/app/contact/view.server';

export function loader({ request, params }: LoaderFunctionArgs) {
  const loaded = loadCase(params);
  return json({
    caseId: loaded.caseId,
    view: contactView(loaded, new URL(request.url).searchParams),
  });
}

export default function Contact() {
  const { caseId, view } = useLoaderData<typeof loader>();
  const { places, measures, stands, system } = view;
  const stood = useMemo(() => (stands.ok ? stand(stands.value) : stands), [stands]);
  const assumed = places.filter(({ chosen }) => chosen.startsWith('new:')).map(({ label }) => label);
  return (
    <Page
      title="Wheel on rail"
      intro="A wheelset stood on a pair of rails: where they touch, at what angle, and how it rolls. Plane geometry of rigid outlines, the axle square to the track."
      actions={
        <>
          <Link to={`/cases/${caseId}/wheels`}>Wheels</Link>
          <Link to={`/cases/${caseId}/rails`}>Rails</Link>
          <Link to="/methods#contact-geometry">How it is found</Link>
        </>
      }
    >
      <Sheet title="What stands on what" id="what">
        <ContactForm places={places} measures={measures} />
      </Sheet>
      <Sheet title="Across the track" id="across">
        {assumed.length > 0 && (
          <p className="note note--care">
            <strong>Not traced:</strong> {assumed.join(', ').toLowerCase()}. A new shape stands in; what
            follows is not this wheel on this rail.
          </p>
        )}
        {stood.ok ? (
          <ContactAcross key={JSON.stringify(stood.value.fromMm)} stood={stood.value} system={system} />
        ) : (
          <p className="note note--care">{stood.message}</p>
        )}
      </Sheet>
      {stood.ok && (
        <Sheet title="Over all shifts" id="over">
          <p className="soft">
            As drawn, without uncertainty; where all four are traced, the findings on Rails carry it.
          </p>
          <ContactNumbers stood={stood.value} system={system} />
        </Sheet>
      )}
    </Page>
  );
}
