import { Form } from '@remix-run/react';
import type { ReactNode } from 'react';
import type { PhotoChoices, PhotoErrors, PhotoForm as Values } from '~/app/photos/edit.server';
import { Message } from '../Message';

type Props = {
  readonly values: Values;
  readonly errors?: PhotoErrors;
  readonly choices: PhotoChoices;
  readonly captionLength: number;
  readonly saved: boolean;
};

function Field({
  id,
  label,
  error,
  children,
}: {
  readonly id: string;
  readonly label: string;
  readonly error?: string;
  readonly children: ReactNode;
}) {
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {children}
      {error && (
        <p className="field__error" id={`${id}-error`}>
          {error}
        </p>
      )}
    </div>
  );
}

const marked = (id: string, error: string | undefined) =>
  error ? ({ 'aria-invalid': true, 'aria-describedby': `${id}-error` } as const) : {};

/** What is said about one photo. The file itself never changes. */
export function PhotoForm({ values, errors = {}, choices, captionLength, saved }: Props) {
  return (
    <Form method="post" className="form" noValidate>
      <input type="hidden" name="intent" value="photo" />
      {Object.keys(errors).length > 0 ? (
        <Message tone="bad">What you entered is still below, with what to enter instead.</Message>
      ) : (
        saved && <Message tone="good">The file is as it was.</Message>
      )}
      <Field id="photo-caption" label="Caption" error={errors.caption}>
        <textarea
          id="photo-caption"
          name="caption"
          maxLength={captionLength}
          defaultValue={values.caption}
          {...marked('photo-caption', errors.caption)}
        />
      </Field>
      <Field id="photo-subject" label="What it shows" error={errors.subject}>
        <select
          id="photo-subject"
          name="subject"
          defaultValue={values.subject}
          {...marked('photo-subject', errors.subject)}
        >
          <option value="">Not said</option>
          {choices.subjects.map(({ kind, options }) => (
            <optgroup key={kind} label={kind}>
              {options.map(({ key, label }) => (
                <option key={key} value={key}>
                  {label}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      </Field>
      <Field id="photo-person" label="Taken by" error={errors.person}>
        <select
          id="photo-person"
          name="person"
          defaultValue={values.person}
          {...marked('photo-person', errors.person)}
        >
          <option value="">Not said</option>
          {choices.people.map(({ id, label }) => (
            <option key={id} value={id}>
              {label}
            </option>
          ))}
        </select>
      </Field>
      <Field id="photo-taken" label="When (local time)" error={errors.takenAt}>
        <input
          id="photo-taken"
          name="takenAt"
          type="datetime-local"
          defaultValue={values.takenAt}
          {...marked('photo-taken', errors.takenAt)}
        />
      </Field>
      <div>
        <button className="button button--main">Save what is said about it</button>
      </div>
    </Form>
  );
}
