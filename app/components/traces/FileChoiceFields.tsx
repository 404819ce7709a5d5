import type { FileView } from '~/app/traces/file.server';
import { LabelledSelect } from '../LabelledSelect';

const UNITS = [
  { id: 'mm', label: 'mm' },
  { id: 'in', label: 'inches' },
];

/** How the numbers of a file become a line: what was guessed, and where to change it. */
export function FileChoiceFields({ view }: { readonly view: FileView }) {
  const { columns, choice, guesses, skipped } = view;
  const options = columns.map(({ label, samples }, index) => ({
    id: String(index),
    label: `${label}: ${samples}`,
  }));
  return (
    <>
      <ul className="plain-list small">
        {guesses.map((guess) => (
          <li key={guess}>{guess}</li>
        ))}
      </ul>
      {skipped.length > 0 && (
        <div className="note note--care">
          <strong>Left out.</strong>
          <ul>
            {skipped.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </div>
      )}
      <input type="hidden" name="chosen" value="1" />
      <div className="form__grid">
        <LabelledSelect
          id="file-unit"
          name="unit"
          label="Numbers are in"
          value={choice.unit}
          options={UNITS}
        />
        <LabelledSelect
          id="file-x"
          name="x"
          label="x, across"
          value={String(choice.columns[0])}
          options={options}
        />
        <LabelledSelect
          id="file-y"
          name="y"
          label="y, up"
          value={String(choice.columns[1])}
          options={options}
        />
      </div>
      <div className="row">
        <label className="check">
          <input type="checkbox" name="flipX" defaultChecked={choice.flipped.x} />
          Turn it over left to right
        </label>
        <label className="check">
          <input type="checkbox" name="flipY" defaultChecked={choice.flipped.y} />
          Turn it upside down
        </label>
      </div>
    </>
  );
}
