import { describe, expect, it } from 'vitest';
import { toSvg } from '~/lib/figures/svg';
import { wheelClock, type WheelClockData } from '~/lib/figures/wheel-clock';
import { wheelClockData } from '~/lib/figures/wheel-clock-data';
import { buildContext } from '~/lib/findings/context';
import { fitBackToBack } from '~/lib/wheel/back-to-back';
import { expectShapesInside, expectWordsInside, overlappingWords, shapesOf, wordsOf } from './bounds';
import { recordBuilder } from './invented-record';
import { expectSamePicture } from './same-picture';

const clock = (readings: readonly (readonly [number, number])[], uMm = 0.46): WheelClockData => {
  const taken = readings.map(([degrees, valueMm]) => ({ clockRad: (degrees * Math.PI) / 180, valueMm, uMm }));
  const fit = fitBackToBack(
    taken.map(({ clockRad, valueMm }) => ({ clockRad, backToBackMm: valueMm })),
    uMm,
  );
  return { system: 'metric', name: 'Axle 1', readings: taken, fit: fit.kind === 'fitted' ? fit : null };
};
/** Mean 1350, swing 2 × 3 mm, widest at 90°. */
const bent = clock([0, 90, 180, 270].map((d) => [d, 1350 + 3 * Math.sin((d * Math.PI) / 180)] as const));

describe('wheelClock', () => {
  it.each([
    [
      'three places',
      clock([
        [0, 1350],
        [120, 1352],
        [240, 1347],
      ]),
      460,
    ],
    ['on a phone', bent, 340],
    [
      'two places',
      clock([
        [0, 1350],
        [90, 1351],
      ]),
      460,
    ],
    ['six places', clock([0, 60, 120, 180, 240, 300].map((d) => [d, 1350 + d / 100] as const)), 520],
    ['none', clock([]), 340],
  ])('keeps its words inside and apart: %s', (_, data, width) => {
    const figure = wheelClock(data, { width });
    expectWordsInside(figure, 11);
    expectShapesInside(figure);
    expect(overlappingWords(figure)).toEqual([]);
    expect(toSvg(figure)).not.toContain('NaN');
  });

  it('draws the same on screen and on the page', async () => {
    await expectSamePicture(wheelClock(bent, { width: 460 }));
  });

  it('draws the fitted curve through the readings', () => {
    const shapes = shapesOf(wheelClock(bent, { width: 460 }));
    const dots = shapes.filter((shape) => shape.type === 'circle' && shape.fill === 'mark');
    const curve = shapes.find(
      (shape) =>
        shape.type === 'polyline' &&
        shape.stroke?.ink === 'wheel' &&
        shape.stroke.width > 1.5 &&
        !shape.closed,
    );
    if (curve?.type !== 'polyline') throw new Error('no curve');
    expect(dots).toHaveLength(4);
    for (const dot of dots) {
      if (dot.type !== 'circle') continue;
      let nearest = Infinity;
      for (let i = 0; i < curve.points.length; i += 2)
        nearest = Math.min(nearest, Math.hypot(curve.points[i]! - dot.cx, curve.points[i + 1]! - dot.cy));
      expect(nearest).toBeLessThan(1.5);
    }
  });

  it('draws a band of two standard uncertainties of the curve, wider where fewer places were read', () => {
    const width = (data: WheelClockData, degrees: number): number => {
      const figure = wheelClock(data, { width: 460 });
      const band = shapesOf(figure).find((shape) => shape.type === 'polyline' && shape.fillOpacity === 0.16);
      if (band?.type !== 'polyline') throw new Error('no band');
      const points = band.points.length / 2;
      const at = (i: number): readonly [number, number] => [band.points[2 * i]!, band.points[2 * i + 1]!];
      const place = Math.round(degrees / 2);
      const [outer, inner] = [at(place), at(points - 1 - place)];
      return Math.hypot(outer[0] - inner[0], outer[1] - inner[1]);
    };
    const lopsided = clock([
      [0, 1350],
      [60, 1350],
      [120, 1350],
      [180, 1350],
    ]);
    expect(width(lopsided, 270) / width(lopsided, 90)).toBeGreaterThan(2);
    // Four places evenly spread: u of the curve is u·√(1/4 + 2/4) everywhere, of a reading u.
    const even = clock([0, 90, 180, 270].map((d) => [d, 1350] as const));
    const bar = shapesOf(wheelClock(even, { width: 460 })).find(
      (shape) => shape.type === 'line' && shape.stroke?.ink === 'mark',
    );
    if (bar?.type !== 'line') throw new Error('no bar');
    const barLength = Math.hypot(bar.x2 - bar.x1, bar.y2 - bar.y1);
    expect(width(even, 34) / barLength).toBeCloseTo(Math.sqrt(0.75), 2);
  });

  it('tells how far readings beyond three scatter about the curve', () => {
    const text = wordsOf(
      wheelClock(
        clock([
          [0, 1350],
          [90, 1351],
          [180, 1350],
          [270, 1351],
        ]),
        { width: 520 },
      ),
    );
    // Residuals of ∓½ mm at four places with one degree of freedom: √(4·¼/1) = 1 mm.
    expect(text).toContain('Readings scatter 1.0 mm');
  });

  it('says mean, swing and where it is widest', () => {
    const text = wordsOf(wheelClock(bent, { width: 520 }));
    expect(text).toContain('Mean 1350.00 ± 0.46 mm');
    expect(text).toContain('Swing 6.0 ± 1.3 mm');
    // u(A) = u·√(2/4), so that 2·u(φ) is 2·0.46·√½/3 rad, 12.4°.
    expect(text).toContain('Widest at 90° ± 13°');
  });

  it('names no direction when the swing is no larger than its uncertainty', () => {
    const figure = wheelClock(
      clock([
        [0, 1350],
        [120, 1350.1],
        [240, 1350],
      ]),
      { width: 520 },
    );
    expect(figure.description).toContain('no direction is shown');
    expect(wordsOf(figure)).not.toContain('Widest');
  });

  it('asks for more places where two were read', () => {
    const figure = wheelClock(
      clock([
        [0, 1350],
        [90, 1351],
      ]),
      { width: 520 },
    );
    expect(figure.description).toContain('Three places 120° apart are needed');
  });
});

describe('wheelClockData', () => {
  it('takes the undisturbed readings of the wheelset and their fit', () => {
    const { entity, reading, build } = recordBuilder();
    const id = entity('wheelset', { axle: 1, disturbance: 'undisturbed' });
    for (const [slot, value] of [
      ['0', 1350],
      ['120', 1352],
      ['240', 1347],
    ] as const)
      reading('wheelset', id, 'backToBack', value, { slot, disturbance: 'undisturbed' });
    reading('wheelset', id, 'backToBack', 1400, { slot: '60', disturbance: 'disturbed' });
    const data = wheelClockData(buildContext(build(), { seed: 1 }), id, 'Axle 1');
    expect(data!.readings.map(({ valueMm }) => valueMm)).toEqual([1350, 1352, 1347]);
    expect(data!.fit!.meanMm).toBeCloseTo(1349.667, 3);
  });

  it('is nothing for a wheelset nobody read', () => {
    const { entity, build } = recordBuilder();
    const id = entity('wheelset', { axle: 1 });
    expect(wheelClockData(buildContext(build(), { seed: 1 }), id, 'Axle 1')).toBeNull();
  });
});
