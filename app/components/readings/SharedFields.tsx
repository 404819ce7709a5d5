import { DISTURBANCES, SAMPLINGS } from '~/lib/case/record';
import type { ReadingsAnswer } from '~/app/readings/cells';
import type { ReadingsChoices, ReadingsView } from '~/app/readings/view.server';
import { DISTURBANCE_LABELS, SAMPLING_LABELS } from '~/app/readings/wording';

type Props = {
  readonly id: string;
  readonly choices: ReadingsChoices;
  readonly defaults: ReadingsView['defaults'];
  readonly answer?: ReadingsAnswer;
};

type Option = { readonly id: string; readonly label: string };

function Select({
  id,
  name,
  label,
  value,
  options,
}: {
  readonly id: string;
  readonly name: string;
  readonly label: string;
  readonly value: string;
  readonly options: readonly Option[];
}) {
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} name={name} defaultValue={value}>
        {options.map((option) => (
          <option key={option.id} value={option.id}>
            {option.label}
          </option>
        ))}
      </select>
    </div>
  );
}

const NOT_SAID: Option = { id: '', label: 'Not said' };

/** Who took the readings below, when, with what, and in which state the thing was. */
export function SharedFields({ id, choices, defaults, answer }: Props) {
  const value = (name: string, fallback: string) => answer?.values[name] ?? fallback;
  const timeError = answer?.errors.takenAt;
  return (
    <fieldset className="shared">
      <legend className="visually-hidden">Who, when and with what</legend>
      <div className="form__grid">
        <Select
          id={`${id}-person`}
          name="person"
          label="Taken by"
          value={value('person', defaults.person)}
          options={[NOT_SAID, ...choices.people]}
        />
        <Select
          id={`${id}-instrument`}
          name="instrument"
          label="With"
          value={value('instrument', '')}
          options={[{ id: '', label: 'Ordinary instrument, not named' }, ...choices.instruments]}
        />
        <div className="field">
          <label htmlFor={`${id}-at`}>When (local time)</label>
          <input
            id={`${id}-at`}
            name="takenAt"
            type="datetime-local"
            defaultValue={value('takenAt', '')}
            aria-invalid={timeError ? true : undefined}
            aria-describedby={timeError ? `${id}-at-error` : undefined}
          />
          {timeError && (
            <p className="field__error" id={`${id}-at-error`}>
              {timeError}
            </p>
          )}
          <label className="check">
            <input type="checkbox" name="justNow" defaultChecked={value('justNow', '') !== ''} />
            Just now
          </label>
        </div>
        <Select
          id={`${id}-state`}
          name="disturbance"
          label="State when read"
          value={value('disturbance', defaults.disturbance)}
          options={DISTURBANCES.map((each) => ({ id: each, label: DISTURBANCE_LABELS[each] }))}
        />
        <Select
          id={`${id}-sampling`}
          name="sampling"
          label="How it was chosen"
          value={value('sampling', 'notSaid')}
          options={SAMPLINGS.map((each) => ({ id: each, label: SAMPLING_LABELS[each] }))}
        />
        <div className="field">
          <label htmlFor={`${id}-note`}>Note</label>
          <input
            id={`${id}-note`}
            name="note"
            type="text"
            maxLength={1000}
            autoComplete="off"
            defaultValue={value('note', '')}
          />
        </div>
      </div>
    </fieldset>
  );
}
