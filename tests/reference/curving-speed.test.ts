import { describe, expect, it } from 'vitest';
import { fromCanonical, toCanonical } from '~/lib/readings/convert';
import {
  balanceElevationIn,
  balanceElevationMm,
  balanceSpeedMs,
  maximumCurvingSpeedMph,
  maximumCurvingSpeedMs,
  QUALIFIED_UNBALANCE_MM,
  unbalanceMm,
} from '~/lib/track/curving-speed';
import { curvatureOfDegrees } from '~/lib/track/curvature';
import table from './curving-speeds-213-a-1.json';

describe('49 CFR part 213, appendix A, table 1 (three inches unbalance): every entry', () => {
  for (const row of table.rows) {
    const degrees = row.degrees + row.minutes / 60;
    it(`${row.degrees}° ${row.minutes}′: ${row.mph.length} elevations, to the mile per hour printed`, () => {
      expect(table.elevationIn.map((ea) => Math.round(maximumCurvingSpeedMph(degrees, ea, 3)))).toEqual(
        row.mph,
      );
      // The same through canonical units, as findings use it.
      const canonical = table.elevationIn.map((ea) =>
        Math.round(
          fromCanonical(
            maximumCurvingSpeedMs(curvatureOfDegrees(degrees), toCanonical(ea, 'in', 'crossLength')),
            'mph',
            'speed',
          ),
        ),
      );
      expect(canonical).toEqual(row.mph);
    });
  }
});

describe('49 CFR 213.57', () => {
  it('(b): 6°, Ea 4 in, Eu 3 in gives 40.8 mile/h, 41 in table 1 of appendix A', () => {
    expect(maximumCurvingSpeedMph(6, 4, 3)).toBeCloseTo(40.82, 2);
  });

  it('(c): every vehicle is qualified for 3 in', () => {
    expect(QUALIFIED_UNBALANCE_MM).toBeCloseTo(76.2, 10);
  });

  it('(b) turned round: 0.0007·D·V² at the speed allowed is Ea + Eu', () => {
    expect(balanceElevationIn(6, maximumCurvingSpeedMph(6, 4, 3))).toBeCloseTo(7, 12);
    const curvature = curvatureOfDegrees(6);
    const speed = maximumCurvingSpeedMs(curvature, 101.6);
    expect(unbalanceMm(curvature, speed, 101.6)).toBeCloseTo(76.2, 9);
  });

  it('no balance speed on tangent or with the outer rail low', () => {
    expect(balanceSpeedMs(0, 50)).toBe(Infinity);
    expect(balanceSpeedMs(0.003, -10)).toBeNaN();
  });
});

describe('the constant 0.0007: Newton’s laws with the contact spacing it implies', () => {
  const elevationPerDegreeMph2 = (spacingIn: number) => {
    const v = toCanonical(1, 'mph', 'speed');
    return (spacingIn * v * v * curvatureOfDegrees(1)) / 9.80665;
  };

  it('E = s·V²/(gR) with s = 60 in (AREMA: wheel loads about 60 in apart) is 0.0007 within 0.1 %', () => {
    expect(elevationPerDegreeMph2(60) / 0.0007).toBeCloseTo(1, 3);
  });

  it('with s = 56 1/2 in it is the 0.00066 of US Army subcourse TR0671, table IV', () => {
    expect(elevationPerDegreeMph2(56.5)).toBeCloseTo(0.00066, 5);
  });

  it('the canonical form agrees with the printed one', () => {
    expect(balanceElevationMm(curvatureOfDegrees(8), toCanonical(25, 'mph', 'speed'))).toBeCloseTo(
      balanceElevationIn(8, 25) * 25.4,
      9,
    );
  });
});
