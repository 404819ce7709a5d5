import { BY_COLUMN, type About } from '~/app/imports/about';
import type { ImportKind } from '~/db/imports';
import type { ReadingsChoices } from '~/app/readings/view.server';
import { DISTURBANCE_LABELS, SAMPLING_LABELS } from '~/app/readings/wording';
import { DISTURBANCES, SAMPLINGS } from '~/lib/case/record';
import { LabelledInput } from '../LabelledInput';
import { LabelledSelect } from '../LabelledSelect';

export type AboutFileProps = {
  readonly kind: ImportKind;
  readonly about: About;
  readonly errors: Readonly<Record<string, string>>;
  readonly choices: ReadingsChoices;
  readonly vehicles: readonly { readonly id: string; readonly label: string }[];
};

const NOT_SAID = { id: '', label: 'Not said' };

function AboutRun({ about, errors, vehicles }: AboutFileProps) {
  return (
    <>
      <LabelledInput id="about-name" name="name" label="Name of this run" maxLength={80} value={about.name} />
      <LabelledSelect
        id="about-vehicle"
        name="vehicle"
        label="Recorded on"
        value={about.vehicle}
        options={[NOT_SAID, ...vehicles]}
      />
      <LabelledInput
        id="about-offset"
        name="clockOffsetS"
        label="Seconds to add to its clock"
        help="From comparing it with a clock that is right."
        value={about.clockOffsetS}
        error={errors.clockOffsetS}
      />
      <LabelledInput
        id="about-note"
        name="note"
        label="Note"
        help="How it was downloaded; which sample is thought to be the POD, and why."
        maxLength={1000}
        value={about.note}
      />
    </>
  );
}

function AboutReadings({ kind, about, errors, choices }: AboutFileProps) {
  return (
    <>
      <LabelledSelect
        id="about-person"
        name="person"
        label="Taken by"
        value={about.person}
        options={[NOT_SAID, ...choices.people]}
      />
      <LabelledInput
        id="about-at"
        name="takenAt"
        type="datetime-local"
        label="When (local time)"
        value={about.takenAt}
        error={errors.takenAt}
      />
      <LabelledSelect
        id="about-instrument"
        name="instrument"
        label="With"
        value={about.instrument}
        options={[
          { id: BY_COLUMN, label: 'The case’s usual instrument for each column' },
          { id: '', label: 'Ordinary instruments, not named' },
          ...choices.instruments,
        ]}
      />
      {kind === 'stations' && (
        <LabelledSelect
          id="about-state"
          name="disturbance"
          label="State when read"
          help="Where the file itself says nothing."
          value={about.disturbance}
          options={DISTURBANCES.map((id) => ({ id, label: DISTURBANCE_LABELS[id] }))}
        />
      )}
      <LabelledSelect
        id="about-sampling"
        name="sampling"
        label="How they were chosen"
        value={about.sampling}
        options={SAMPLINGS.map((id) => ({ id, label: SAMPLING_LABELS[id] }))}
      />
      <LabelledInput id="about-note" name="note" label="Note" maxLength={1000} value={about.note} />
    </>
  );
}

/** What holds for every row of the file. */
export function AboutFile(props: AboutFileProps) {
  return (
    <fieldset className="shared">
      <legend className="visually-hidden">For the whole file</legend>
      <p className="label" aria-hidden="true">
        For the whole file
      </p>
      <div className="form__grid">
        {props.kind === 'recorder' ? <AboutRun {...props} /> : <AboutReadings {...props} />}
      </div>
    </fieldset>
  );
}
