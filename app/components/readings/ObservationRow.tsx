import { examinedCell, noteCell, valueCell, type ReadingsAnswer } from '~/app/readings/cells';
import type { ReadingsView } from '~/app/readings/view.server';
import { OBSERVATION_LABELS, OBSERVATION_STATES, type Observation } from '~/lib/readings/quantity';
import { TakenReadings } from './TakenReadings';

type Props = {
  readonly quantity: Observation;
  readonly view: ReadingsView;
  readonly answer?: ReadingsAnswer;
};

function Boxes({ quantity, view, answer }: Props) {
  const cell = valueCell(quantity.id, '');
  const examined = examinedCell(quantity.id);
  const note = noteCell(quantity.id);
  const id = `${view.form}-${cell}`;
  const chosen = answer?.values[cell] ?? '';
  const error = answer?.errors[cell] ?? answer?.errors[examined];
  return (
    <>
      <div className="states" role="radiogroup" aria-label={quantity.name}>
        {(['notLooked', ...OBSERVATION_STATES] as const).map((state) => {
          const value = state === 'notLooked' ? '' : state;
          return (
            <label className="check" key={state}>
              <input type="radio" name={cell} value={value} defaultChecked={chosen === value} />
              {OBSERVATION_LABELS[state]}
            </label>
          );
        })}
      </div>
      <div className="reading-row__slots">
        <div className="cell">
          <label className="small" htmlFor={`${id}-examined`}>
            Could be examined, %
          </label>
          <input
            id={`${id}-examined`}
            name={examined}
            type="text"
            inputMode="decimal"
            autoComplete="off"
            defaultValue={answer?.values[examined] ?? ''}
            aria-invalid={error ? true : undefined}
            aria-describedby={error ? `${id}-error` : undefined}
          />
        </div>
        <div className="cell field--long">
          <label className="small" htmlFor={`${id}-note`}>
            What was seen, and where
          </label>
          <input
            id={`${id}-note`}
            name={note}
            type="text"
            maxLength={1000}
            autoComplete="off"
            defaultValue={answer?.values[note] ?? ''}
          />
        </div>
      </div>
      {error && (
        <p className="field__error" id={`${id}-error`}>
          {error}
        </p>
      )}
    </>
  );
}

/** Something looked for: four states that are never merged. No record means nobody looked. */
export function ObservationRow(props: Props) {
  const { quantity, view, answer } = props;
  const taken = view.taken[valueCell(quantity.id, '')] ?? [];
  const refused = answer?.values[valueCell(quantity.id, '')] !== undefined;
  return (
    <div className="reading-row">
      <span className="label">{quantity.question}</span>
      <TakenReadings caseId={view.caseId} readings={taken} />
      {taken.length === 0 ? (
        <Boxes {...props} />
      ) : (
        <details className="disclose" open={refused}>
          <summary>Record another look</summary>
          <Boxes {...props} />
        </details>
      )}
    </div>
  );
}
