import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { currentReadings, standing } from '~/lib/case/current';
import { KINDS } from '~/lib/case/kinds';
import type { EntityKind } from '~/lib/case/record';
import { GROUPS } from '~/lib/readings/quantities';
import type { QuantityGroup, ScreenId } from '~/lib/readings/quantity';

export type MissingPart = {
  readonly screen: ScreenId | 'photos';
  readonly name: string;
  /** In words, the most basic first. */
  readonly missing: readonly string[];
  /** Quantities of the screen read at least once, of all there are. */
  readonly read: number;
  readonly of: number;
};

const SCREENS: readonly {
  readonly screen: ScreenId;
  readonly name: string;
  readonly kinds: readonly EntityKind[];
}[] = [
  { screen: 'scene', name: 'Scene', kinds: ['person', 'instrument', 'statement'] },
  { screen: 'train', name: 'Train', kinds: ['vehicle'] },
  { screen: 'marks', name: 'Marks', kinds: ['mark'] },
  { screen: 'track', name: 'Track', kinds: ['station'] },
  { screen: 'wheels', name: 'Wheels', kinds: ['wheelset', 'truck'] },
  { screen: 'rails', name: 'Rails', kinds: ['rail'] },
  { screen: 'turnout', name: 'Turnout', kinds: ['turnout'] },
];

function groupLine(group: QuantityGroup, read: ReadonlySet<string>): string | null {
  const missing = group.quantities.filter(({ id }) => !read.has(id));
  if (missing.length === 0) return null;
  const looked = group.quantities.every(({ kind }) => kind === 'observation');
  if (missing.length === group.quantities.length) {
    return looked
      ? `Nothing looked for yet (${group.name.toLowerCase()})`
      : `Not read: ${group.name.toLowerCase()}`;
  }
  const names = missing.map(({ short, name }) => short || name);
  const shown = names.slice(0, 4).join(', ') + (names.length > 4 ? ` and ${names.length - 4} more` : '');
  return looked ? `Not looked for: ${shown}` : `${group.name}, not read: ${shown}`;
}

/** What each screen still lacks, from what is empty; a record that does not apply can stay missing. */
export const missingParts = (loaded: LoadedCase): readonly MissingPart[] =>
  derived(loaded, 'missing parts', () => {
    const { record } = loaded;
    const read = new Set(currentReadings(record).map(({ quantity }) => quantity));
    const parts = SCREENS.map(({ screen, name, kinds }): MissingPart => {
      const groups = GROUPS.filter((group) => group.screen === screen);
      const quantities = groups.flatMap((group) => group.quantities);
      const empty = kinds.filter((kind) => standing(record, kind).length === 0);
      // Readings of a thing that is not entered yet are not listed: the thing itself is.
      const asked = groups.filter(
        ({ subject }) => subject === 'case' || standing(record, subject).length > 0,
      );
      return {
        screen,
        name,
        missing: [
          ...empty.map((kind) => `No ${KINDS[kind].name.toLowerCase()} yet`),
          ...asked.flatMap((group) => groupLine(group, read) ?? []),
        ],
        read: quantities.filter(({ id }) => read.has(id)).length,
        of: quantities.length,
      };
    });
    const photos = record.photos.filter(({ removed }) => removed === null);
    const uncaptioned = photos.filter(({ caption }) => caption === '').length;
    return [
      ...parts,
      {
        screen: 'photos',
        name: 'Photos',
        missing: [
          ...(photos.length === 0 ? ['No photo yet'] : []),
          ...(uncaptioned > 0 ? [`${uncaptioned} without a caption`] : []),
        ],
        read: photos.length - uncaptioned,
        of: photos.length,
      },
    ];
  });
