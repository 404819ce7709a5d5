import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { currentReadings } from '~/lib/case/current';
import { missing, type Missing } from '~/lib/findings/missing';
import { groupsFor } from '~/lib/readings/quantities';

export type MissingPart = {
  readonly screen: Missing['screen'];
  readonly name: string;
  /** In words, the most basic first. */
  readonly missing: readonly string[];
  /** Quantities of the screen read at least once, of all there are; photos with a caption, of all. */
  readonly read: number;
  readonly of: number;
};

const SCREENS = [
  { screen: 'scene', name: 'Scene' },
  { screen: 'train', name: 'Train' },
  { screen: 'marks', name: 'Marks' },
  { screen: 'track', name: 'Track' },
  { screen: 'wheels', name: 'Wheels' },
  { screen: 'rails', name: 'Rails' },
  { screen: 'turnout', name: 'Turnout' },
  { screen: 'photos', name: 'Photos' },
] as const satisfies readonly Pick<MissingPart, 'screen' | 'name'>[];

/** What each screen still lacks; a record that does not apply can stay missing. */
export const missingParts = (loaded: LoadedCase): readonly MissingPart[] =>
  derived(loaded, 'missing parts', () => {
    const { record } = loaded;
    const read = new Set(currentReadings(record).map(({ quantity }) => quantity));
    const photos = record.photos.filter(({ removed }) => removed === null);
    const lines = missing(record);
    return SCREENS.map(({ screen, name }): MissingPart => {
      const quantities = screen === 'photos' ? [] : groupsFor(screen).flatMap((group) => group.quantities);
      return {
        screen,
        name,
        missing: lines.filter((line) => line.screen === screen).map(({ text }) => text),
        read:
          screen === 'photos'
            ? photos.filter(({ caption }) => caption !== '').length
            : quantities.filter(({ id }) => read.has(id)).length,
        of: screen === 'photos' ? photos.length : quantities.length,
      };
    });
  });
