import { describe, expect, it } from 'vitest';
import { trainProfile } from '~/lib/figures/train-profile';
import type { TrainProfileData } from '~/lib/figures/train-profile-data';
import { expectShapesInside, expectWordsInside, wordsOf } from './bounds';

const count = 40;
const of = (by: (i: number) => number, n = count): number[] => Array.from({ length: n }, (_, i) => by(i));
const data: TrainProfileData = {
  system: 'us',
  middlesM: of((i) => 9 + 18 * i),
  couplersM: of((i) => 18 * (i + 1), count - 1),
  positions: of((i) => i + 1),
  massesKg: of((i) => (i % 3 === 0 ? 28_000 : 120_000)),
  trailingKg: of((i) => (count - 1 - i) * 90_000),
  first: 20,
  forcesKn: {
    mean: of((i) => 400 - 20 * i, count - 1),
    low: of((i) => 300 - 20 * i, count - 1),
    high: of((i) => 500 - 20 * i, count - 1),
  },
  ratios: { mean: of(() => 0.2), low: of(() => 0.1), high: of(() => 0.3) },
  grades: of((i) => 0.01 * Math.cos(i / 8)),
  curvatures: of((i) => (i < 10 ? 0 : i < 25 ? 0.003 : -0.002)),
};

describe('trainProfile', () => {
  it.each([1120, 360])('stays inside its frame at %i', (width) => {
    const figure = trainProfile(data, { width });
    expectShapesInside(figure);
    expectWordsInside(figure, 10);
  });

  it('draws a bar for every weight and names the ends of the range once', () => {
    const figure = trainProfile(data, { width: 1120 });
    const text = JSON.stringify(figure.shapes);
    expect(wordsOf(figure).match(/5th and 95th percentile/g)).toHaveLength(2);
    expect(text.match(/"type":"rect"/g)?.length ?? 0).toBeGreaterThanOrEqual(count);
    expect(figure.description).toContain('First to derail: position 21.');
  });

  it('leaves out forces that could not be computed, and says so when there are no weights', () => {
    const bare = trainProfile(
      { ...data, forcesKn: null, ratios: null, grades: null, curvatures: null },
      { width: 800 },
    );
    expect(wordsOf(bare)).not.toContain('coupler force');
    const none = trainProfile({ ...data, massesKg: of(() => NaN) }, { width: 800 });
    expect(wordsOf(none)).toBe('No weights are recorded.');
  });
});
