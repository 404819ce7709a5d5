import { describe, expect, it } from 'vitest';
import type { FactWeight } from '~/lib/explanations/argument';
import { EXPLANATION_IDS } from '~/lib/explanations/explanation';
import { FACT_IDS } from '~/lib/explanations/fact';
import { argumentBars, decibanText, type ArgumentBarsData } from '~/lib/figures/argument-bars';
import { toSvg } from '~/lib/figures/svg';
import { expectShapesInside, expectWordsInside, overlappingWords, shapesOf, wordsOf } from './bounds';
import { expectSamePicture } from './same-picture';

const fact = (at: number, name: string, climb: number, rollover: number, recorded = true): FactWeight => ({
  fact: FACT_IDS[at]!,
  name,
  forFact: 0,
  against: {
    wheelClimb: climb,
    railRollover: rollover,
    wideGauge: -1,
    switchPointPick: 0.2,
    somethingElse: 0,
  },
  witnesses: [],
  recorded,
});
const data: ArgumentBarsData = {
  order: EXPLANATION_IDS.map((explanation, i) => ({
    explanation,
    name: `Explanation ${i}`,
    decibans: 20 - 12 * i,
  })),
  facts: [
    fact(0, 'A flange crossed the head of the high rail', 14.2, -9),
    fact(1, 'The wheel was light', 4.1, -0.2),
    fact(2, 'Gauge under load exceeded what the wheelset spans', -0.7, -12.6),
    fact(3, 'The point could be struck', 0, 0, false),
  ],
};

describe('argumentBars', () => {
  it.each([1100, 700, 360])('keeps its words inside and apart at a width of %i', (width) => {
    const figure = argumentBars(data, { width });
    expectWordsInside(figure);
    expectShapesInside(figure);
    expect(overlappingWords(figure)).toEqual([]);
  });

  it('draws the same on screen and on the page', async () => {
    await expectSamePicture(argumentBars(data, { width: 700 }));
  });

  it('draws one group for each explanation but the background', () => {
    const groups = argumentBars(data, { width: 700 }).shapes.filter((shape) => shape.type === 'group');
    expect(groups.map((group) => (group.type === 'group' ? group.label : ''))).toEqual(
      EXPLANATION_IDS.flatMap((id, i) => (id === 'somethingElse' ? [] : [`Explanation ${i}`])),
    );
  });

  it('draws bars to one scale, for to the right, against to the left', () => {
    const bars = shapesOf(argumentBars(data, { width: 700 }))
      .filter((shape) => shape.type === 'rect')
      .slice(2);
    const [crossed, light] = bars;
    const rolled = bars
      .filter((bar) => bar.type === 'rect' && bar.fill === undefined)
      .reduce((a, b) => (a.type === 'rect' && b.type === 'rect' && b.width > a.width ? b : a));
    if (crossed?.type !== 'rect' || light?.type !== 'rect' || rolled.type !== 'rect')
      throw new Error('bars missing');
    expect(crossed.width / light.width).toBeCloseTo(14.2 / 4.1, 6);
    expect(rolled.width / crossed.width).toBeCloseTo(12.6 / 14.2, 6);
    expect(rolled.x + rolled.width).toBeCloseTo(crossed.x, 6);
  });

  it('counts what says little and what has no record', () => {
    const text = wordsOf(argumentBars(data, { width: 700 }));
    expect(text).toContain('1 fact has no record.');
    expect(text).toContain(
      'Nothing recorded speaks for or against; 3 facts that were looked at say little either way',
    );
  });

  it('stands with nothing recorded and with no explanation', () => {
    const none = argumentBars({ ...data, facts: [] }, { width: 360 });
    expectWordsInside(none);
    expect(toSvg(none)).not.toContain('NaN');
    expect(argumentBars({ order: [], facts: [] }, { width: 360 }).shapes.length).toBeGreaterThan(0);
  });
});

describe('decibanText', () => {
  it.each([
    [14.2, '+14'],
    [-0.74, '−0.7'],
    [9.96, '+10'],
    [0.04, '0'],
    [-0.04, '0'],
  ])('%d is %s', (value, text) => expect(decibanText(value)).toBe(text));
});
