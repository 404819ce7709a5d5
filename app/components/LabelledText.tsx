type Props = {
  readonly id: string;
  readonly name: string;
  readonly label: string;
  readonly value: string;
  readonly rows: number;
  readonly maxLength: number;
  readonly help?: string;
  readonly error?: string;
};

/** Several lines of text with their label, their help, and what was wrong with them. */
export function LabelledText({ id, name, label, value, rows, maxLength, help, error }: Props) {
  const described = [help && `${id}-help`, error && `${id}-error`].filter(Boolean).join(' ');
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {help && (
        <p className="field__help" id={`${id}-help`}>
          {help}
        </p>
      )}
      <textarea
        id={id}
        name={name}
        rows={rows}
        maxLength={maxLength}
        defaultValue={value}
        aria-invalid={error ? true : undefined}
        aria-describedby={described || undefined}
      />
      {error && (
        <p className="field__error" id={`${id}-error`}>
          {error}
        </p>
      )}
    </div>
  );
}
