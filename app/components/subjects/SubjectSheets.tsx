import { Link } from '@remix-run/react';
import type { ReactNode } from 'react';
import type { ReadingsAnswer } from '~/app/readings/cells';
import type { ReadingsChoices } from '~/app/readings/view.server';
import type { SubjectPart } from '~/app/subjects/part.server';
import { FindingList } from '../findings/FindingList';
import { ReadingsForm } from '../readings/ReadingsForm';
import { Sheet } from '../Sheet';
import { GlanceTable } from './GlanceTable';
import { PhotoStrip } from './PhotoStrip';
import { SubjectHead } from './SubjectHead';
import { SubTabs } from './SubTabs';

type Props = {
  readonly part: SubjectPart;
  readonly choices: ReadingsChoices;
  readonly answer?: ReadingsAnswer;
  /** A drawing of what follows from the open group of readings. */
  readonly figure?: ReactNode;
};

/** One thing of the case: what is said of it, then one group of its readings with what follows beside them. */
export function SubjectSheets({ part, choices, answer, figure }: Props) {
  const { open, tabs, others, glance } = part;
  const follows = open.findings.length > 0 || Boolean(figure);
  return (
    <>
      <Sheet
        title={part.name}
        id="chosen"
        aside={
          <Link to={part.edit} className="button button--small">
            Change what is said of it
          </Link>
        }
      >
        <div className={glance.length > 0 ? 'beside beside--even' : undefined}>
          <div className="stack">
            <SubjectHead part={part} />
            <PhotoStrip {...part} />
          </div>
          <GlanceTable rows={glance} name={part.name} />
        </div>
      </Sheet>
      <Sheet title={tabs.length > 1 ? 'Its readings' : (tabs[0]?.name ?? 'Its readings')} id="readings">
        <SubTabs label="Groups of readings" tabs={tabs} open={open.readings.groups[0]} />
        <div className={follows ? 'beside' : undefined}>
          <ReadingsForm view={open.readings} choices={choices} answer={answer} />
          {follows && (
            <div className="stack">
              <h3>What follows</h3>
              {figure}
              <FindingList findings={open.findings} empty="" />
            </div>
          )}
        </div>
      </Sheet>
      {others.length > 0 && (
        <Sheet title="What else follows">
          <FindingList findings={others} empty="" />
        </Sheet>
      )}
    </>
  );
}
