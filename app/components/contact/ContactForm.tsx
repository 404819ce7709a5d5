import { Form } from '@remix-run/react';
import type { ContactView } from '~/app/contact/view.server';
import { LabelledInput } from '../LabelledInput';
import { LabelledSelect } from '../LabelledSelect';

type Props = Pick<ContactView, 'places' | 'measures'>;

/** Which wheels on which rails, and how far apart; works by its address alone. */
export function ContactForm({ places, measures }: Props) {
  return (
    <Form method="get" className="form" noValidate>
      <div className="form__grid">
        {places.map(({ id, label, chosen, options }) => (
          <LabelledSelect
            key={`${id} ${chosen}`}
            id={id}
            name={id}
            label={label}
            value={chosen}
            options={options}
          />
        ))}
      </div>
      <div className="form__grid">
        {measures.map(({ id, label, text, error, from }) => (
          <LabelledInput
            key={`${id} ${text}`}
            id={id}
            name={id}
            label={label}
            value={text}
            help={from}
            maxLength={30}
            error={error ?? undefined}
          />
        ))}
      </div>
      <div>
        <button className="button button--main">Stand it on the rails</button>
      </div>
    </Form>
  );
}
