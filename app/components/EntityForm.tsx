import { Form } from '@remix-run/react';
import type { ReactNode } from 'react';
import type { FormValues } from '~/app/entities/form-values';
import type { Option } from '~/app/entities/options';
import type { Kind } from '~/lib/case/kind';
import { FieldInput } from './FieldInput';
import { Message } from './Message';

type Props = {
  readonly kind: Kind;
  readonly values: FormValues;
  readonly errors?: Readonly<Record<string, string>>;
  /** Choices of the fields that refer to other records, by kind. */
  readonly options?: Readonly<Record<string, readonly Option[]>>;
  /** Only these fields, in this order; all of the kind when left out. */
  readonly only?: readonly string[];
  readonly submit: string;
  /** Sent as `intent`, for a page with more than one form. */
  readonly intent?: string;
  readonly action?: string;
  readonly prefix?: string;
  /** Further boxes above the button, or hidden ones. */
  readonly children?: ReactNode;
  /** Beside the button. */
  readonly aside?: ReactNode;
};

/** The form of one kind of record, made from its fields. Sent as a whole page where there is no JavaScript. */
export function EntityForm(props: Props) {
  const {
    kind,
    values,
    errors = {},
    options = {},
    only,
    submit,
    intent,
    action,
    prefix,
    children,
    aside,
  } = props;
  const fields = only ? only.flatMap((id) => kind.fields.filter((field) => field.id === id)) : kind.fields;
  const wrong = fields.filter(({ id }) => errors[id]);
  return (
    <Form method="post" action={action} className="form" noValidate>
      {intent && <input type="hidden" name="intent" value={intent} />}
      {wrong.length > 0 && (
        <Message tone="bad">
          Everything you entered is still below; put right:
          <ul>
            {wrong.map(({ id, label }) => (
              <li key={id}>
                <a href={`#${prefix ?? 'f'}-${id}`}>{label}</a>: {errors[id]}
              </li>
            ))}
          </ul>
        </Message>
      )}
      <div className="form__grid">
        {fields.map((field) => (
          <FieldInput
            key={field.id}
            field={field}
            value={values[field.id] ?? ''}
            error={errors[field.id]}
            options={field.type === 'ref' ? options[field.to] : undefined}
            prefix={prefix}
          />
        ))}
      </div>
      {children}
      <div className="row">
        <button className="button button--main">{submit}</button>
        {aside}
      </div>
    </Form>
  );
}
