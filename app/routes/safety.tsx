import type { MetaFunction } from '@remix-run/node';
import { Page } from '~/app/components/Page';
import { SAFETY_POINTS } from '~/lib/case/safety';

export const meta: MetaFunction = () => [{ title: 'Safety and scope · Flangemark' }];

export default function Safety() {
  return (
    <Page title="Safety and scope" intro="Read before you go on site, and before you rely on a number.">
      {SAFETY_POINTS.map(({ title, text }) => (
        <section key={title} className="sheet">
          <h2>{title}</h2>
          <p>{text}</p>
        </section>
      ))}
    </Page>
  );
}
