import { describe, expect, it } from 'vitest';
import { HOW_TO_FIGURES, howToFigure } from '~/lib/figures/howto';
import { SKETCH_HEIGHT, SKETCH_WIDTH } from '~/lib/figures/howto/sketch';
import { GROUPS } from '~/lib/readings/quantities';
import { expectShapesInside, expectWordsInside, overlappingWords, shapesOf, textsOf } from './bounds';
import { expectSamePicture } from './same-picture';

const keys = [...new Set(GROUPS.flatMap(({ howTo }) => (howTo.figure === undefined ? [] : [howTo.figure])))];
const drawings = Object.entries(HOW_TO_FIGURES);

describe('howToFigure', () => {
  it('has a drawing for every name the catalogue uses', () => {
    expect(keys.length).toBeGreaterThan(15);
    expect(keys.filter((key) => howToFigure(key) === undefined)).toEqual([]);
  });

  it('keeps no drawing that nothing uses', () => {
    expect(drawings.map(([key]) => key).filter((key) => !keys.includes(key))).toEqual([]);
  });

  it.each(['', 'nothing', 'toString', '__proto__'])('knows no drawing called %j', (key) => {
    expect(howToFigure(key)).toBeUndefined();
  });
});

describe.each(drawings)('%s', (_, figure) => {
  it('is of the common size and says what it shows', () => {
    expect([figure.width, figure.height]).toEqual([SKETCH_WIDTH, SKETCH_HEIGHT]);
    expect(figure.description.length).toBeGreaterThan(60);
    expect(figure.title).not.toBe('');
  });

  it('keeps its words legible, inside and apart', () => {
    expectWordsInside(figure, 11);
    expect(overlappingWords(figure)).toEqual([]);
    expect(textsOf(figure).every((text) => text.text !== '')).toBe(true);
  });

  it('keeps its lines inside, and has no place that is not a number', () => {
    expectShapesInside(figure);
    for (const shape of shapesOf(figure))
      for (const value of shape.type === 'polyline' ? shape.points : Object.values(shape))
        if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
  });
});

describe('on the page', () => {
  it.each(['wheelShape', 'spikesAndPlate'])('%s is the same as on the screen', async (key) => {
    await expectSamePicture(howToFigure(key)!);
  });
});
