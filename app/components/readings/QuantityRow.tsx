import { OPEN_PLACES, placeCell, placedCell, valueCell, type ReadingsAnswer } from '~/app/readings/cells';
import type { ReadingsView } from '~/app/readings/view.server';
import type { Quantity } from '~/lib/readings/quantity';
import { TakenReadings } from './TakenReadings';
import { ValueCell } from './ValueCell';

type Props = {
  readonly quantity: Quantity;
  readonly view: ReadingsView;
  readonly answer?: ReadingsAnswer;
};

function OpenPlaces({ quantity, view, answer }: Props) {
  const { name } = quantity;
  return (
    <details className="disclose" open={OPEN_PLACES.some((n) => answer?.values[placedCell(quantity.id, n)])}>
      <summary>Other positions</summary>
      <div className="reading-row__slots">
        {OPEN_PLACES.map((n) => {
          const place = placeCell(quantity.id, n);
          const placed = placedCell(quantity.id, n);
          const id = `${view.form}-${placed}`;
          const error = answer?.errors[place];
          return (
            <div className="cell" key={n}>
              <label className="small soft" htmlFor={`${id}-place`}>
                Position, degrees
              </label>
              <input
                id={`${id}-place`}
                name={place}
                type="text"
                inputMode="numeric"
                autoComplete="off"
                defaultValue={answer?.values[place] ?? ''}
                aria-invalid={error ? true : undefined}
                aria-describedby={error ? `${id}-place-error` : undefined}
              />
              {error && (
                <p className="field__error" id={`${id}-place-error`}>
                  {error}
                </p>
              )}
              <span className="small soft">Read there</span>
              <ValueCell
                id={id}
                name={placed}
                quantity={quantity}
                label={`${name}, other position ${n}`}
                value={answer?.values[placed] ?? ''}
                error={answer?.errors[placed]}
              />
            </div>
          );
        })}
      </div>
    </details>
  );
}

/** One quantity with a box for each place it is read at. */
export function QuantityRow({ quantity, view, answer }: Props) {
  const slots = quantity.slots.length === 0 ? [{ id: '', label: '' }] : quantity.slots;
  return (
    <div className="reading-row reading-row--measure">
      <div>
        <span className="label">{quantity.name}</span>
        {quantity.kind === 'goNoGo' && <p className="field__help">{quantity.check}</p>}
      </div>
      <div className="reading-row__slots">
        {slots.map((slot) => {
          const cell = valueCell(quantity.id, slot.id);
          return (
            <div className="cell" key={slot.id}>
              {slot.label && (
                <span className="small soft" aria-hidden="true">
                  {slot.label}
                </span>
              )}
              <ValueCell
                id={`${view.form}-${cell}`}
                name={cell}
                quantity={quantity}
                label={slot.label ? `${quantity.name}, ${slot.label}` : quantity.name}
                value={answer?.values[cell] ?? ''}
                error={answer?.errors[cell]}
              />
              <TakenReadings caseId={view.caseId} readings={view.taken[cell]} />
            </div>
          );
        })}
      </div>
      {quantity.openSlots && (
        <>
          <TakenReadings caseId={view.caseId} readings={view.taken[valueCell(quantity.id, '+')]} />
          <OpenPlaces quantity={quantity} view={view} answer={answer} />
        </>
      )}
    </div>
  );
}
