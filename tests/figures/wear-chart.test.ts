import { describe, expect, it } from 'vitest';
import { toSvg } from '~/lib/figures/svg';
import { wearChart, type WearChartData } from '~/lib/figures/wear-chart';
import { wearHistory, type WearPoint } from '~/lib/wheel/wear-history';
import { expectShapesInside, expectWordsInside, overlappingWords, shapesOf, wordsOf } from './bounds';
import { expectSamePicture } from './same-picture';

const chart = (
  points: readonly WearPoint[],
  limitMm: number | null,
  sense: 'min' | 'max' = 'min',
): WearChartData => {
  const history = wearHistory(points, limitMm, sense);
  if (!history.ok) throw new Error(history.message);
  return {
    system: 'metric',
    feature: 'Flange thickness',
    name: 'left wheel, axle 2',
    history: history.value,
    limit: limitMm === null ? null : 'at least 22.2 mm, 49 CFR 215.103(a)',
    dates: points.map((_, i) => `203${i}-04-0${i + 1}`),
  };
};
const at = (distanceRunKm: number, valueMm: number, uMm = 0.3): WearPoint => ({
  distanceRunKm,
  valueMm,
  uMm,
});
const worn = chart([at(20_000, 32), at(90_000, 30.6), at(160_000, 28.4), at(230_000, 27.2)], 22.225);

describe('wearChart', () => {
  it.each([
    ['on a page', worn, 628],
    ['on a phone, miles', { ...worn, system: 'us' } as const, 358],
    ['two readings', chart([at(0, 32), at(50_000, 31)], 22.225), 628],
    ['a rate that cannot be told from none', chart([at(0, 32), at(50_000, 31.9)], 22.225), 358],
    ['no limit', chart([at(0, 1), at(50_000, 2), at(90_000, 2.1)], null), 358],
    ['past its limit', chart([at(0, 26), at(50_000, 24), at(90_000, 21.5)], 22.225), 628],
    ['away from its limit', chart([at(0, 26), at(50_000, 27)], 22.225), 628],
  ])('keeps its words inside and apart: %s', (_, data, width) => {
    const figure = wearChart(data, { width });
    expectWordsInside(figure, 11);
    expectShapesInside(figure);
    expect(overlappingWords(figure)).toEqual([]);
    expect(toSvg(figure)).not.toContain('NaN');
  });

  it('tells the rate and the reach of the limit, each with its interval', () => {
    const text = wordsOf(wearChart(worn, { width: 628 })).replaceAll('\n', ' ');
    const { per100000Km: rate, reach } = worn.history;
    if (reach?.kind !== 'reached') throw new Error('never');
    const minus = (value: number): string => value.toFixed(1).replace('-', '−');
    expect(text).toContain(
      `${minus(rate.value)} mm per 100,000 km (95 %: ${minus(rate.low)} to ${minus(rate.high)}`,
    );
    expect(text).toContain(
      `would reach it at ${(Math.round(reach.atKm / 1000) * 1000).toLocaleString('en-US')} km`,
    );
  });

  it('marks the limit where the line meets it', () => {
    const shapes = shapesOf(wearChart(worn, { width: 628 }));
    const limit = shapes.find((shape) => shape.type === 'polyline' && shape.stroke?.dash?.[0] === 7);
    const diamond = shapes.find((shape) => shape.type === 'polyline' && shape.fill === 'limit');
    const beyond = shapes.find((shape) => shape.type === 'polyline' && shape.stroke?.dash?.[0] === 5);
    if (limit?.type !== 'polyline' || diamond?.type !== 'polyline' || beyond?.type !== 'polyline')
      throw new Error('not drawn');
    const x = diamond.points[0]!;
    const [x0, y0, x1, y1] = beyond.points as [number, number, number, number];
    expect(y0 + ((x - x0) / (x1 - x0)) * (y1 - y0)).toBeCloseTo(limit.points[1]!, 6);
  });

  it('draws the same on screen and on the page', async () => {
    await expectSamePicture(wearChart(worn, { width: 628 }));
  });
});
