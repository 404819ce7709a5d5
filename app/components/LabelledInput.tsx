import type { HTMLInputTypeAttribute } from 'react';

type Props = {
  readonly id: string;
  readonly name: string;
  readonly label: string;
  readonly value?: string;
  readonly type?: HTMLInputTypeAttribute;
  readonly inputMode?: 'numeric' | 'decimal';
  readonly maxLength?: number;
  readonly help?: string;
  readonly error?: string;
};

/** One line of text with its label, its help, and what was wrong with it. */
export function LabelledInput(props: Props) {
  const { id, name, label, value = '', type = 'text', inputMode, maxLength = 400, help, error } = props;
  const described = [help && `${id}-help`, error && `${id}-error`].filter(Boolean).join(' ');
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {help && (
        <p className="field__help" id={`${id}-help`}>
          {help}
        </p>
      )}
      <input
        id={id}
        name={name}
        type={type}
        inputMode={inputMode}
        maxLength={type === 'text' ? maxLength : undefined}
        autoComplete="off"
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
