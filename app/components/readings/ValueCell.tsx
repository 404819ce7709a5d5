import type { Quantity } from '~/lib/readings/quantity';

type Props = {
  readonly id: string;
  readonly name: string;
  readonly quantity: Quantity;
  /** Says the quantity and the place. */
  readonly label: string;
  readonly value: string;
  readonly error?: string;
};

const GO_NO_GO = [
  { id: 'pass', label: 'Pass' },
  { id: 'fail', label: 'Fail' },
] as const;

/** The box for one reading, and why what stands in it was refused. */
export function ValueCell({ id, name, quantity, label, value, error }: Props) {
  const shared = {
    id,
    name,
    'aria-label': label,
    'aria-invalid': error ? (true as const) : undefined,
    'aria-describedby': error ? `${id}-error` : undefined,
    defaultValue: value,
  };
  const options =
    quantity.kind === 'goNoGo' ? GO_NO_GO : quantity.kind === 'choice' ? quantity.choices : null;
  return (
    <>
      {options ? (
        <select {...shared}>
          <option value="">Not read</option>
          {options.map((option) => (
            <option key={option.id} value={option.id}>
              {option.label}
            </option>
          ))}
        </select>
      ) : (
        <input
          {...shared}
          type="text"
          inputMode={quantity.kind === 'count' ? 'numeric' : undefined}
          autoComplete="off"
          enterKeyHint="next"
          maxLength={60}
        />
      )}
      {error && (
        <p className="field__error" id={`${id}-error`}>
          {error}
        </p>
      )}
    </>
  );
}
