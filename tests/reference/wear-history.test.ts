import { describe, expect, it } from 'vitest';
import { studentFactor } from '~/lib/readings/inverse-student';
import { wearHistory, wearLineAt } from '~/lib/wheel/wear-history';
import norris from './norris.json';

const relative = (got: number, wanted: number): number => Math.abs(got / wanted - 1);

describe('NIST StRD, data set Norris', () => {
  const outcome = wearHistory(
    norris.x.map((distanceRunKm, i) => ({ distanceRunKm, valueMm: norris.y[i]!, uMm: 1e-3 })),
    null,
    'max',
  );
  if (!outcome.ok) throw new Error(outcome.message);
  const fit = outcome.value;
  const { certified } = norris;

  it('has the certified line', () => {
    expect(relative(fit.slopeMmPerKm, certified.slope)).toBeLessThan(1e-12);
    expect(relative(wearLineAt(fit, 0).valueMm, certified.intercept)).toBeLessThan(1e-10);
  });

  it('has the certified standard deviations, which come from the scatter', () => {
    expect(fit.intervalFrom).toBe('scatter');
    expect(relative(fit.uSlopeMmPerKm, certified.uSlope)).toBeLessThan(1e-10);
    expect(relative(wearLineAt(fit, 0).halfMm / fit.factor, certified.uIntercept)).toBeLessThan(1e-10);
    expect(relative(fit.scatterMm!, certified.residual)).toBeLessThan(1e-10);
  });
});

describe('Student’s t, JCGM 100:2008 (GUM), table G.2, 95 %', () => {
  it.each([
    [1, 12.71],
    [2, 4.3],
    [3, 3.18],
    [4, 2.78],
    [5, 2.57],
    [8, 2.31],
    [10, 2.23],
    [15, 2.13],
    [20, 2.09],
    [30, 2.04],
    [50, 2.01],
    [100, 1.984],
  ])('%i degrees of freedom', (degrees, wanted) => {
    expect(Math.abs(studentFactor(0.95, degrees) - wanted)).toBeLessThan(degrees === 100 ? 5e-4 : 5.01e-3);
  });
});
