import { describe, expect, it } from 'vitest';
import { normalDraws } from '~/lib/readings/draws';
import { wearHistory, wearLineAt, type WearHistory, type WearPoint } from '~/lib/wheel/wear-history';

const found = (points: readonly WearPoint[], limitMm: number | null, sense: 'min' | 'max'): WearHistory => {
  const outcome = wearHistory(points, limitMm, sense);
  if (!outcome.ok) throw new Error(outcome.message);
  return outcome.value;
};
const point = (distanceRunKm: number, valueMm: number, uMm = 0.3): WearPoint => ({
  distanceRunKm,
  valueMm,
  uMm,
});

describe('wearHistory', () => {
  it('reads the rate off points on a line, per 100,000 km and miles', () => {
    const { per100000Km, per100000Miles } = found(
      [point(0, 30), point(50_000, 29), point(150_000, 27)],
      null,
      'min',
    );
    expect(per100000Km.value).toBeCloseTo(-2, 12);
    expect(per100000Miles.value).toBeCloseTo(-2 * 1.609344, 12);
    expect(per100000Km.low).toBeLessThan(-2);
    expect(per100000Km.high).toBeGreaterThan(-2);
  });

  it('takes the interval from the readings where there are two, and says no scatter', () => {
    const history = found([point(0, 30), point(100_000, 28)], null, 'min');
    expect(history.intervalFrom).toBe('readings');
    expect(history.scatterMm).toBeNull();
    // Half the interval: 1.96 · √2 · 0.3 over the whole distance.
    expect(history.per100000Km.high - history.per100000Km.value).toBeCloseTo(1.959964 * Math.SQRT2 * 0.3, 5);
  });

  it('takes the interval from the scatter where that is wider', () => {
    const history = found(
      [point(0, 30), point(50_000, 27), point(100_000, 30), point(150_000, 26)],
      null,
      'min',
    );
    expect(history.intervalFrom).toBe('scatter');
    expect(history.scatterMm).toBeGreaterThan(1);
  });

  it('weighs a good reading more than a poor one', () => {
    const points = [point(0, 30, 0.05), point(100_000, 28, 0.05), point(200_000, 29, 5)];
    expect(found(points, null, 'min').per100000Km.value).toBeCloseTo(-2, 2);
  });

  it('finds where the limit is reached, within an interval at whose ends the band meets it', () => {
    const history = found(
      [point(0, 30), point(60_000, 29.1), point(120_000, 27.5), point(180_000, 26.6)],
      22,
      'min',
    );
    if (history.reach?.kind !== 'reached') throw new Error('never');
    const { atKm, lowKm, highKm } = history.reach;
    expect(wearLineAt(history, atKm).valueMm).toBeCloseTo(22, 9);
    const low = wearLineAt(history, lowKm!);
    const high = wearLineAt(history, highKm!);
    expect(low.valueMm - low.halfMm).toBeCloseTo(22, 9);
    expect(high.valueMm + high.halfMm).toBeCloseTo(22, 9);
    expect(lowKm!).toBeLessThan(atKm);
    expect(highKm!).toBeGreaterThan(atKm);
  });

  it('leaves the interval open where the rate cannot be told from none', () => {
    const { reach } = found([point(0, 30), point(10_000, 29.9)], 22, 'min');
    expect(reach).toMatchObject({ kind: 'reached', lowKm: null, highKm: null });
  });

  it('says a wheel is not wearing towards its limit', () => {
    expect(found([point(0, 2), point(10_000, 1)], 5, 'max').reach?.kind).toBe('never');
  });

  it('covers the true distance in about 95 of 100 simulated histories', () => {
    const noise = normalDraws('wear', 1, 5 * 2000);
    let covered = 0;
    for (let i = 0; i < 2000; i += 1) {
      const points = [0, 40_000, 90_000, 130_000, 200_000].map((km, k) =>
        // Readings said to be much better than they are: the scatter governs.
        point(km, 30 - 3e-5 * km + 0.3 * noise[5 * i + k]!, 0.01),
      );
      const { reach } = found(points, 22, 'min');
      if (reach?.kind !== 'reached') continue;
      const truth = 8 / 3e-5;
      if (reach.lowKm === null || (reach.lowKm <= truth && truth <= reach.highKm!)) covered += 1;
    }
    expect(covered / 2000).toBeGreaterThan(0.935);
    expect(covered / 2000).toBeLessThan(0.965);
  });

  it.each([
    ['one reading', [point(0, 30)], 'at least two'],
    ['one distance', [point(5, 30), point(5, 29)], 'one distance run'],
    ['no uncertainty', [point(0, 30), point(5, 29, 0)], 'Reading 2'],
    ['not a number', [point(NaN, 30), point(5, 29)], 'Reading 1'],
  ])('refuses %s, saying what to enter', (_, points, words) => {
    const outcome = wearHistory(points, 22, 'min');
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect(outcome.message).toContain(words);
  });
});
