import { Form } from '@remix-run/react';
import { DISTURBANCE_LABELS } from '~/app/readings/wording';
import { DISTURBANCES } from '~/lib/case/record';
import { LabelledInput } from '../LabelledInput';
import { LabelledSelect } from '../LabelledSelect';
import { Message } from '../Message';

type Props = {
  readonly spacing: string;
  readonly person: string;
  readonly people: readonly { readonly id: string; readonly label: string }[];
  readonly refused?: { readonly message: string; readonly values: Readonly<Record<string, string>> };
};

/** Many stations at even spacing in one step. */
export function LayOutForm({ spacing, person, people, refused }: Props) {
  const value = (name: string, usual: string): string => refused?.values[name] ?? usual;
  return (
    <Form method="post" className="form" noValidate>
      <input type="hidden" name="intent" value="layOut" />
      {refused && <Message tone="bad">{refused.message}</Message>}
      <div className="form__grid">
        <LabelledInput
          id="lay-count"
          name="count"
          label="How many"
          inputMode="numeric"
          value={value('count', '20')}
        />
        <LabelledInput
          id="lay-spacing"
          name="spacing"
          label="Spacing"
          help="A quarter of a 62-ft chord is 15 ft 6 in."
          value={value('spacing', spacing)}
        />
        <LabelledSelect
          id="lay-side"
          name="side"
          label="Where"
          value={value('side', 'before')}
          options={[
            { id: 'before', label: 'Back from the POD (negative)' },
            { id: 'past', label: 'On past the POD (positive)' },
          ]}
        />
        <LabelledSelect
          id="lay-state"
          name="disturbance"
          label="State when read"
          value={value('disturbance', 'notSaid')}
          options={DISTURBANCES.map((id) => ({ id, label: DISTURBANCE_LABELS[id] }))}
        />
        <LabelledSelect
          id="lay-person"
          name="person"
          label="Laid out by"
          value={value('person', person)}
          options={[{ id: '', label: 'Not said' }, ...people]}
        />
      </div>
      <p className="soft small">
        They go on from the furthest station on that side. Station 0 at the POD comes with them when there is
        none.
      </p>
      <div>
        <button className="button">Add these stations</button>
      </div>
    </Form>
  );
}
