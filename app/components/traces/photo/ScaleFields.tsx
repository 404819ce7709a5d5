import { SCALE_WAYS, SHEETS, type ScaleWay } from '~/app/traces/photo/scale';

type Props = {
  readonly way: ScaleWay;
  readonly distances: readonly [string, string];
  readonly marked: number;
  readonly onWay: (way: ScaleWay) => void;
  readonly onDistances: (distances: readonly [string, string]) => void;
  readonly onClear: () => void;
};

/** How large the drawing is: which distances are known, and how long they are. */
export function ScaleFields({ way, distances, marked, onWay, onDistances, onClear }: Props) {
  const { help, marks, distances: names } = SCALE_WAYS[way];
  return (
    <div className="stack">
      <div className="field">
        <label htmlFor="scale-way">What is known</label>
        <select
          id="scale-way"
          name="way"
          value={way}
          aria-describedby="scale-way-help"
          onChange={({ target }) => onWay(target.value as ScaleWay)}
        >
          {Object.entries(SCALE_WAYS).map(([id, { label }]) => (
            <option key={id} value={id}>
              {label}
            </option>
          ))}
        </select>
        <p className="field__help" id="scale-way-help">
          {help}
        </p>
      </div>
      {way === 'sheet' && (
        <div className="row">
          {SHEETS.map(({ id, label, sides }) => (
            <button
              key={id}
              type="button"
              className="button button--small"
              onClick={() => onDistances(sides)}
            >
              {label}
            </button>
          ))}
        </div>
      )}
      <div className="form__grid">
        {names.map((name, index) => (
          <div className="field" key={name}>
            <label htmlFor={`distance-${index}`}>{name}</label>
            <input
              id={`distance-${index}`}
              name={`distance${index}`}
              type="text"
              autoComplete="off"
              maxLength={40}
              value={distances[index] ?? ''}
              onChange={({ target }) =>
                onDistances(index === 0 ? [target.value, distances[1]] : [distances[0], target.value])
              }
            />
          </div>
        ))}
      </div>
      <p className="row" role="status">
        <span>
          {marked} of {marks} points marked.
        </span>
        {/* Always there, so that the picture below does not jump at the first mark. */}
        <button type="button" className="button button--small" disabled={marked === 0} onClick={onClear}>
          Mark them anew
        </button>
      </p>
    </div>
  );
}
