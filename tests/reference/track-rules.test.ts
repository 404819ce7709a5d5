import { describe, expect, it } from 'vitest';
import { curveSegment, deviationsFromUniform, segmentAverage } from '~/lib/track/deviation';
import { apart, LESS_THAN_62_FT, WARP_BASE_M, worstWarpUpToEach } from '~/lib/track/warp';
import { toCanonical } from '~/lib/readings/convert';
import { levelsOf, worstOf } from '../track/crosslevel-stations';

const feet = (ft: number) => toCanonical(ft, 'ft', 'alongTrack');
const stationsAt = (spacingFt: number, crosslevelMm: readonly number[]) =>
  crosslevelMm.map((mm, i) => ({ positionM: feet(i * spacingFt), crosslevelMm: mm }));

describe('49 CFR 213.63(a): crosslevel between any two points less than 62 feet apart', () => {
  it('at 15 ft 6 in, stations one, two and three apart are compared, four apart (62 ft) are not', () => {
    const bump = [0, 1, 2, 3, 4].map((at) =>
      stationsAt(
        15.5,
        [0, 1, 2, 3, 4].map((i) => (i === at ? 9 : 0)),
      ),
    );
    const steps = bump.map((stations) =>
      worstWarpUpToEach(levelsOf(stations), LESS_THAN_62_FT).map(({ from, to }) => to - from),
    );
    expect(new Set(steps.flat())).toEqual(new Set([1, 2, 3]));
    const stations = stationsAt(15.5, [0, 5, 10, 15, 100]);
    expect(worstOf(stations, apart(WARP_BASE_M))).toMatchObject({ from: 0, to: 4, changeMm: 100 });
    // 46 ft 6 in apart; the 100 mm over 62 ft is not the answer.
    expect(worstOf(stations)).toMatchObject({ from: 1, to: 4, changeMm: 95 });
  });

  it('61 ft 11 in counts, 62 ft does not, wherever on the railroad the sheet begins', () => {
    for (const originFt of [0, 0.1, 1234.7, -98765.4]) {
      const pair = (apartFt: number) => [
        { positionM: feet(originFt), crosslevelMm: 0 },
        { positionM: feet(originFt + apartFt), crosslevelMm: 50 },
      ];
      expect(worstOf(pair(62 - 1 / 12))?.changeMm).toBe(50);
      expect(worstOf(pair(62))).toBeNull();
    }
  });
});

describe('49 CFR 213.327(a): uniformity from nine consecutive points centred on the point', () => {
  it('the average of the nine, the point itself among them', () => {
    const offsets = [1, 1, 1, 1, 10, 1, 1, 1, 1];
    const at = deviationsFromUniform(offsets)[4];
    expect(at?.uniform).toBeCloseTo(2, 12);
    expect(at?.deviation).toBeCloseTo(8, 12);
    expect(at?.used).toBe(9);
  });
});

describe('49 CFR 213.57, notes: 155 ft, ten points at 15.5 ft', () => {
  const positions = Array.from({ length: 30 }, (_, i) => feet(i * 15.5));
  const body = [positions[0]!, positions[29]!] as const;

  it('a segment anywhere in the body holds ten stations, its last ones too', () => {
    for (const centre of positions) {
      const average = segmentAverage(positions, positions, curveSegment(centre, ...body));
      expect(average?.used).toBe(10);
    }
    const last = segmentAverage(positions, positions, curveSegment(body[1], ...body));
    expect(last?.mean).toBeCloseTo(feet(24.5 * 15.5), 9);
  });

  it('a curve shorter than 155 ft is averaged through the full length of its body', () => {
    const short = positions.slice(0, 6);
    const average = segmentAverage(short, [1, 2, 3, 4, 5, 6], curveSegment(feet(20), short[0]!, short[5]!));
    expect(average).toEqual({ mean: 3.5, used: 6 });
  });
});
