import { Link } from '@remix-run/react';
import type { ReadingsAnswer } from '~/app/readings/cells';
import type { ReadingsChoices } from '~/app/readings/view.server';
import type { SubjectPart } from '~/app/subjects/part.server';
import { FindingList } from '../findings/FindingList';
import { ReadingsForm } from '../readings/ReadingsForm';
import { Sheet } from '../Sheet';
import { SubjectHead } from '../subjects/SubjectHead';

type Props = {
  readonly wheelset: SubjectPart;
  readonly caseId: string;
  readonly defects: readonly SubjectPart[];
  readonly choices: ReadingsChoices;
  readonly answer?: ReadingsAnswer;
};

function Defect({
  defect,
  choices,
  answer,
}: Pick<Props, 'choices' | 'answer'> & { readonly defect: SubjectPart }) {
  const { readings, findings } = defect.open;
  const taken = Object.keys(readings.taken).length > 0;
  return (
    <section className="stack" aria-label={defect.name}>
      <div className="row">
        <h3>{defect.name}</h3>
        <Link to={defect.edit}>Change</Link>
      </div>
      <SubjectHead part={defect} />
      <FindingList findings={findings} empty="Its size was not read yet." />
      <details className="disclose" open={!taken || answer?.form === readings.form}>
        <summary>{taken ? 'Read its size again' : 'Read its size'}</summary>
        <ReadingsForm view={readings} choices={choices} answer={answer} />
      </details>
    </section>
  );
}

/** Defects of the two wheels, each with its size and what the limits say of it. */
export function WheelDefects({ wheelset, caseId, defects, choices, answer }: Props) {
  const back = encodeURIComponent(`/cases/${caseId}/wheels?wheelset=${wheelset.id}`);
  return (
    <Sheet
      title="Defects of its wheels"
      id="defects"
      aside={
        <Link
          className="button button--small"
          to={`/cases/${caseId}/records/wheelDefect/new?wheelset=${wheelset.id}&back=${back}`}
        >
          Add a defect
        </Link>
      }
    >
      {defects.length === 0 && <p className="soft">None recorded on this wheelset.</p>}
      {defects.map((defect) => (
        <Defect key={defect.id} defect={defect} choices={choices} answer={answer} />
      ))}
    </Sheet>
  );
}
