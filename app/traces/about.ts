import { standing } from '~/lib/case/current';
import { nameOfEntity } from '~/lib/case/name-of';
import type { CaseRecord } from '~/lib/case/record';
import type { Trace } from '~/lib/case/trace';

/** What an outline is of: one wheel of a wheelset, the head of a rail, or a point of a turnout. */
export type TraceAbout = Pick<Trace, 'shape' | 'subject' | 'side'>;

/** As it stands in an address or a form: "wheelset:01J…:left". */
export const aboutKey = ({ subject, side }: TraceAbout): string => `${subject.kind}:${subject.id}:${side}`;

/** What such a text names; null when the case has no such thing. */
export function aboutOf(record: CaseRecord, key: string): TraceAbout | null {
  return aboutChoices(record).find(({ id }) => id === key)?.about ?? null;
}

type Choice = { readonly id: string; readonly label: string; readonly about: TraceAbout };

/** Every wheel, rail and point of the case an outline can be of. */
export function aboutChoices(record: CaseRecord): readonly Choice[] {
  const named = (about: TraceAbout, label: string): Choice => ({ id: aboutKey(about), label, about });
  const wheels = standing(record, 'wheelset').flatMap((wheelset) => {
    const name = nameOfEntity(record, 'wheelset', wheelset);
    return (['left', 'right'] as const).map((side) =>
      named(
        { shape: 'wheel', subject: { kind: 'wheelset', id: wheelset.id }, side },
        `${name}, ${side} wheel`,
      ),
    );
  });
  const rails = standing(record, 'rail').map((rail) =>
    named(
      {
        shape: 'rail',
        subject: { kind: 'rail', id: rail.id },
        side: rail.fields.rail === 'right' ? 'right' : 'left',
      },
      nameOfEntity(record, 'rail', rail),
    ),
  );
  const points = standing(record, 'turnout').flatMap((turnout) => {
    const name = nameOfEntity(record, 'turnout', turnout);
    return (['left', 'right'] as const).map((side) =>
      named({ shape: 'point', subject: { kind: 'turnout', id: turnout.id }, side }, `${name}, ${side} point`),
    );
  });
  return [...wheels, ...rails, ...points];
}
