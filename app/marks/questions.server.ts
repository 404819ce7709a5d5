import type { LoadedCase } from '~/app/case.server';
import { standing } from '~/lib/case/current';
import { nameOfEntity } from '~/lib/case/name-of';
import type { Entity } from '~/lib/case/record';

export type Question = {
  readonly text: string;
  readonly links: readonly { readonly text: string; readonly href: string }[];
};

/** What an old hand asks about the first mark: which it is, and whether anybody walked on past it. */
export function podQuestions({ record, caseId }: LoadedCase): readonly Question[] {
  const marks = standing(record, 'mark');
  if (marks.length === 0) return [];
  const pods = marks.filter(({ fields }) => fields.isPod === true);
  const back = encodeURIComponent(`/cases/${caseId}/marks`);
  const link = (mark: Entity) => ({
    text: nameOfEntity(record, 'mark', mark),
    href: `/cases/${caseId}/records/mark/${mark.id}?back=${back}`,
  });
  if (pods.length === 0) {
    return [
      {
        text: 'No mark is said to be the first one, and everything is measured from it. Tick “This is the first mark (POD)” on the one that is:',
        links: marks.map(link),
      },
    ];
  }
  const unsearched = pods.filter(({ fields }) => !fields.walkedBackFt);
  return [
    ...(pods.length > 1
      ? [
          {
            text: `${pods.length} marks are said to be the first one, and there is one POD. Take the tick from all but the first:`,
            links: pods.map(link),
          },
        ]
      : []),
    ...(unsearched.length > 0
      ? [
          {
            text: 'How far back of it were both rails searched? The first mark found is not always the first mark made: walk on, on both rails, and enter how far with',
            links: unsearched.map(link),
          },
        ]
      : []),
  ];
}
