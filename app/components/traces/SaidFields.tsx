import type { ReadingsChoices } from '~/app/readings/view.server';
import { DISTURBANCE_LABELS } from '~/app/readings/wording';
import type { SaidBoxes } from '~/app/traces/said';
import { DISTURBANCES } from '~/lib/case/record';
import type { TracedShape } from '~/lib/case/trace';
import { LabelledInput } from '../LabelledInput';
import { LabelledSelect } from '../LabelledSelect';

type Props = {
  readonly shape: TracedShape;
  readonly choices: ReadingsChoices;
  readonly values: SaidBoxes;
  readonly errors?: Readonly<Record<string, string>>;
  /** While the outline is brought in: how a rail was held, and where a point was traced, can be said once only. */
  readonly isNew?: boolean;
};

const NOT_SAID = { id: '', label: 'Not said' };

/** Who took an outline, when, with what, and in which state the thing was. */
export function SaidFields({ shape, choices, values, errors = {}, isNew = false }: Props) {
  return (
    <fieldset className="shared">
      <legend className="visually-hidden">Who, when and with what</legend>
      <div className="form__grid">
        <LabelledSelect
          id="said-person"
          name="person"
          label="Taken by"
          value={values.person}
          options={[NOT_SAID, ...choices.people]}
        />
        <LabelledSelect
          id="said-instrument"
          name="instrument"
          label="With"
          value={values.instrument}
          options={[{ id: '', label: 'Ordinary instrument, not named' }, ...choices.instruments]}
        />
        <LabelledInput
          id="said-at"
          name="takenAt"
          type="datetime-local"
          label="When (local time)"
          value={values.takenAt}
          error={errors.takenAt}
        />
        <LabelledSelect
          id="said-state"
          name="disturbance"
          label="State when traced"
          value={values.disturbance || 'notSaid'}
          options={DISTURBANCES.map((id) => ({ id, label: DISTURBANCE_LABELS[id] }))}
        />
        {shape === 'wheel' && (
          <LabelledInput
            id="said-distance"
            name="distance"
            label="Distance run"
            help="Since new or since turned, such as 85,000 mi. Leave empty when not known."
            value={values.distance}
            error={errors.distance}
            maxLength={30}
          />
        )}
        {isNew && shape === 'point' && (
          <LabelledInput
            id="said-behind"
            name="behind"
            label="Behind the tip"
            help="0 at the tip itself, else with its unit, such as 1 ft or 300 mm."
            value={values.behind}
            error={errors.behind}
            maxLength={60}
          />
        )}
        {isNew && shape === 'rail' && (
          <label className="row">
            <input type="checkbox" name="plumb" defaultChecked={values.plumb !== ''} /> Its upright is square
            to the track, as with a level board across both rails
          </label>
        )}
        <LabelledInput id="said-note" name="note" label="Note" maxLength={1000} value={values.note} />
      </div>
    </fieldset>
  );
}
