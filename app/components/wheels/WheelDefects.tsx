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

/** Defects of the two wheels, each with its size and what the limits say of it. */
export function WheelDefects({ wheelset, caseId, defects, choices, answer }: Props) {
  const back = encodeURIComponent(`/cases/${caseId}/wheels?wheelset=${wheelset.id}`);
  return (
    <Sheet
      title="Defects"
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
        <section key={defect.id} className="stack" aria-label={defect.name}>
          <div className="sheet__head">
            <h3>{defect.name}</h3>
            <Link to={`/cases/${caseId}/records/wheelDefect/${defect.id}?back=${back}`}>Change</Link>
          </div>
          <SubjectHead part={defect} />
          {defect.forms.map(({ readings, findings }) => (
            <div key={readings.form} className={findings.length > 0 ? 'beside' : undefined}>
              <ReadingsForm view={readings} choices={choices} answer={answer} />
              {findings.length > 0 && (
                <div className="stack">
                  <h4>What follows</h4>
                  <FindingList findings={findings} empty="" />
                </div>
              )}
            </div>
          ))}
        </section>
      ))}
    </Sheet>
  );
}
