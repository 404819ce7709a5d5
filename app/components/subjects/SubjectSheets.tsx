import { Link } from '@remix-run/react';
import type { ReactNode } from 'react';
import type { ReadingsAnswer } from '~/app/readings/cells';
import type { ReadingsChoices } from '~/app/readings/view.server';
import type { SubjectPart } from '~/app/subjects/part.server';
import { GROUPS } from '~/lib/readings/quantities';
import { FindingList } from '../findings/FindingList';
import { ReadingsForm } from '../readings/ReadingsForm';
import { Sheet } from '../Sheet';
import { PhotoStrip } from './PhotoStrip';
import { SubjectHead } from './SubjectHead';

type Props = {
  readonly part: SubjectPart;
  readonly choices: ReadingsChoices;
  readonly answer?: ReadingsAnswer;
  /** Drawings beside the findings of a form, by the id of its first group. */
  readonly figures?: Readonly<Record<string, ReactNode>>;
};

const titleOf = (groups: readonly string[]): string =>
  groups.flatMap((id) => GROUPS.find((group) => group.id === id)?.name ?? []).join(', ');

/** One thing of the case: what is said of it, then its readings form by form, with what follows beside them. */
export function SubjectSheets({ part, choices, answer, figures = {} }: Props) {
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
        <SubjectHead part={part} />
        <PhotoStrip {...part} />
      </Sheet>
      {part.forms.map(({ readings, findings }) => {
        const first = readings.groups[0] ?? '';
        const figure = figures[first];
        const follows = findings.length > 0 || figure !== undefined;
        return (
          <Sheet key={readings.form} title={titleOf(readings.groups)} id={first}>
            <div className={follows ? 'beside' : undefined}>
              <ReadingsForm view={readings} choices={choices} answer={answer} />
              {follows && (
                <div className="stack">
                  <h3>What follows</h3>
                  {figure}
                  <FindingList findings={findings} empty="Nothing yet." />
                </div>
              )}
            </div>
          </Sheet>
        );
      })}
      {part.others.length > 0 && (
        <Sheet title="What else follows">
          <FindingList findings={part.others} empty="" />
        </Sheet>
      )}
    </>
  );
}
