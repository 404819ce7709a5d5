import { Form } from '@remix-run/react';
import type { ReadingsChoices } from '~/app/readings/view.server';
import type { Disturbance } from '~/lib/case/record';
import { OBSERVATION_LABELS, OBSERVATION_STATES, type Quantity } from '~/lib/readings/quantity';
import { Message } from '../Message';
import { SharedFields } from './SharedFields';
import { ValueCell } from './ValueCell';

type Props = {
  readonly quantity: Quantity;
  readonly choices: ReadingsChoices;
  readonly disturbance: Disturbance;
  /** What stands in the boxes: the reading as it is, or what was sent and refused. */
  readonly values: Readonly<Record<string, string>>;
  readonly errors?: Readonly<Record<string, string>>;
};

function Text({ name, label, value, error }: { name: string; label: string; value: string; error?: string }) {
  return (
    <div className="field">
      <label htmlFor={`correct-${name}`}>{label}</label>
      <input
        id={`correct-${name}`}
        name={name}
        type="text"
        autoComplete="off"
        maxLength={400}
        defaultValue={value}
        aria-invalid={error ? true : undefined}
        aria-describedby={error ? `correct-${name}-error` : undefined}
      />
      {error && (
        <p className="field__error" id={`correct-${name}-error`}>
          {error}
        </p>
      )}
    </div>
  );
}

/** A new reading in the place of one that was wrong, with the reason. Both stay. */
export function CorrectForm({ quantity, choices, disturbance, values, errors = {} }: Props) {
  const answer = { form: '', saved: 0, questions: [], errors, values, stamp: '' };
  return (
    <Form method="post" className="form" noValidate>
      <input type="hidden" name="intent" value="correct" />
      {Object.keys(errors).length > 0 && (
        <Message tone="bad">What you entered is still below, with what to enter instead.</Message>
      )}
      {quantity.kind === 'observation' ? (
        <>
          <fieldset>
            <legend className="label">{quantity.question}</legend>
            <div className="states">
              {OBSERVATION_STATES.map((state) => (
                <label className="check" key={state}>
                  <input type="radio" name="value" value={state} defaultChecked={values.value === state} />
                  {OBSERVATION_LABELS[state]}
                </label>
              ))}
            </div>
            {errors.value && <p className="field__error">{errors.value}</p>}
          </fieldset>
          <Text
            name="examined"
            label="Could be examined, %"
            value={values.examined ?? ''}
            error={errors.examined}
          />
        </>
      ) : (
        <div className="field">
          <span className="label">{quantity.name}</span>
          <ValueCell
            id="correct-value"
            name="value"
            quantity={quantity}
            label={quantity.name}
            value={values.value ?? ''}
            error={errors.value}
          />
        </div>
      )}
      <SharedFields
        id="correct"
        choices={choices}
        defaults={{ person: values.person ?? '', disturbance }}
        answer={answer}
      />
      <Text name="reason" label="Why it is corrected" value={values.reason ?? ''} error={errors.reason} />
      <div>
        <button className="button button--main">Keep the correction</button>
      </div>
    </Form>
  );
}
