import type { Field } from '~/lib/case/kind';
import type { Option } from '~/app/entities/options';

type Props = {
  readonly field: Field;
  readonly value: string;
  readonly error?: string;
  /** For a field that refers to other records. */
  readonly options?: readonly Option[];
  /** Keeps ids apart when several forms are on one page. */
  readonly prefix?: string;
};

type Control = {
  readonly id: string;
  readonly name: string;
  readonly required?: boolean;
  readonly 'aria-invalid'?: true;
  readonly 'aria-describedby'?: string;
};

function Choices({
  options,
  control,
  value,
}: {
  options: readonly Option[];
  control: Control;
  value: string;
}) {
  return (
    <select {...control} defaultValue={value}>
      <option value="">Not said</option>
      {options.map(({ id, label }) => (
        <option key={id} value={id}>
          {label}
        </option>
      ))}
    </select>
  );
}

function Entry({ field, value, options = [], control }: Props & { readonly control: Control }) {
  switch (field.type) {
    case 'choice':
      return <Choices options={field.choices} control={control} value={value} />;
    case 'ref':
      return <Choices options={options} control={control} value={value} />;
    case 'text':
      return field.long ? (
        <textarea {...control} defaultValue={value} maxLength={field.maxLength} />
      ) : (
        <input {...control} type="text" defaultValue={value} maxLength={field.maxLength} autoComplete="off" />
      );
    case 'integer':
      return <input {...control} type="text" inputMode="numeric" defaultValue={value} autoComplete="off" />;
    case 'date':
      return <input {...control} type="date" defaultValue={value} />;
    case 'dateTime':
      return <input {...control} type="datetime-local" defaultValue={value} />;
    case 'flag':
      return <input {...control} type="checkbox" defaultChecked={value === 'on'} />;
  }
}

const WIDE_CHARACTERS = 150;

function widthOf(field: Field): string {
  if (field.type !== 'text') return '';
  if (field.long) return 'field--long';
  return (field.maxLength ?? 0) >= WIDE_CHARACTERS ? 'field--wide' : '';
}

/** One box of a form with its label, its help, and what was wrong with it. */
export function FieldInput(props: Props) {
  const { field, error, prefix = 'f' } = props;
  const id = `${prefix}-${field.id}`;
  const described = [field.help && `${id}-help`, error && `${id}-error`].filter(Boolean).join(' ');
  const control: Control = {
    id,
    name: field.id,
    ...(error ? { 'aria-invalid': true } : {}),
    ...(described ? { 'aria-describedby': described } : {}),
  };
  const help = field.help && (
    <p className="field__help" id={`${id}-help`}>
      {field.help}
    </p>
  );
  const wrong = error && (
    <p className="field__error" id={`${id}-error`}>
      {error}
    </p>
  );
  if (field.type === 'flag') {
    return (
      <div className="field">
        <label className="check" htmlFor={id}>
          <Entry {...props} control={control} />
          {field.label}
        </label>
        {help}
        {wrong}
      </div>
    );
  }
  return (
    <div className={`field ${widthOf(field)}`}>
      <label htmlFor={id}>
        {field.label}
        {field.required && <span className="soft"> (needed)</span>}
      </label>
      <Entry {...props} control={control} />
      {wrong}
      {help}
    </div>
  );
}
