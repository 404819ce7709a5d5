import { Form } from '@remix-run/react';
import { useId } from 'react';

type Props = {
  /** What the button and the closed line say, such as "Remove this mark". */
  readonly label: string;
  readonly intent: string;
  /** What will happen, in a sentence. */
  readonly explain: string;
  readonly error?: string;
  readonly entered?: string;
  readonly action?: string;
  readonly hidden?: Readonly<Record<string, string>>;
};

/** Something that may only be done with a written reason. Opens in place, with or without JavaScript. */
export function ReasonForm({ label, intent, explain, error, entered = '', action, hidden = {} }: Props) {
  const id = useId();
  return (
    <details className="disclose" open={Boolean(error)}>
      <summary>{label} …</summary>
      <Form method="post" action={action} className="form">
        <input type="hidden" name="intent" value={intent} />
        {Object.entries(hidden).map(([name, value]) => (
          <input key={name} type="hidden" name={name} value={value} />
        ))}
        <p>{explain}</p>
        <div className="field">
          <label htmlFor={id}>Reason</label>
          <input
            id={id}
            name="reason"
            type="text"
            defaultValue={entered}
            maxLength={400}
            autoComplete="off"
            aria-invalid={error ? true : undefined}
            aria-describedby={error ? `${id}-error` : undefined}
          />
          {error && (
            <p className="field__error" id={`${id}-error`}>
              {error}
            </p>
          )}
        </div>
        <div>
          <button className="button button--danger">{label}</button>
        </div>
      </Form>
    </details>
  );
}
