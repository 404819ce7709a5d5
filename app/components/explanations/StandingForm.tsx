import { Form } from '@remix-run/react';
import type { StandingRefusal } from '~/app/explanations/standing.server';
import { LabelledInput } from '../LabelledInput';
import { LabelledSelect } from '../LabelledSelect';

const OPTIONS = [
  { id: 'notConsidered', label: 'Not yet considered' },
  { id: 'excluded', label: 'Excluded' },
  { id: 'stands', label: 'Stands' },
];

type Props = {
  readonly explanation: string;
  readonly standing: string;
  readonly reason: string;
  readonly refused: StandingRefusal | null;
};

/** What the investigator makes of one explanation, always with a reason. */
export function StandingForm({ explanation, standing, reason, refused }: Props) {
  const own = refused?.explanation === explanation ? refused : null;
  return (
    <Form method="post" className="form" preventScrollReset noValidate>
      <input type="hidden" name="intent" value="standing" />
      <input type="hidden" name="explanation" value={explanation} />
      <LabelledSelect
        id={`${explanation}-standing`}
        name="standing"
        label="Standing"
        value={own?.standing ?? standing}
        options={OPTIONS}
      />
      <LabelledInput
        id={`${explanation}-reason`}
        name="reason"
        label="Reason, and what it rests on"
        value={own?.reason ?? reason}
        error={own?.message}
      />
      <div>
        <button className="button">Keep</button>
      </div>
    </Form>
  );
}
