import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { downSample } from '~/lib/figures/down-sample';
import { recorderChart, type RecorderChartData } from '~/lib/figures/recorder-chart';
import { recorderChartData } from '~/lib/figures/recorder-chart-data';
import { runs } from '~/lib/figures/runs';
import { toSvg } from '~/lib/figures/svg';
import { expectShapesInside, expectWordsInside, overlappingWords, shapesOf, wordsOf } from './bounds';
import { expectSamePicture } from './same-picture';

const series = (count: number, by: (i: number) => number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => by(i));

/** One sample a second; emergency at 900 s. */
const run = (count = 1000): RecorderChartData => ({
  system: 'us',
  name: 'lead unit',
  podTimeS: 888,
  authorisedSpeedMs: 11.176,
  samples: {
    time: series(count, (i) => i),
    speed: series(count, (i) => (i < 900 ? 11 + Math.sin(i / 60) : Math.max(0, 11 - (i - 900) * 0.25))),
    throttle: series(count, (i) => (i < 900 ? 3 + Math.round(2 * Math.sin(i / 80)) : 0)),
    brakePipe: series(count, (i) => (i < 900 ? 620 : 0)),
    endOfTrainPressure: series(count, (i) => (i < 903 ? 600 : 0)),
    emergency: series(count, (i) => (i < 900 ? 0 : 1)),
  },
});

describe('downSample', () => {
  it('keeps the lowest and the highest value of every run of samples', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1e3, max: 1e3, noNaN: true }), { minLength: 3, maxLength: 600 }),
        fc.integer({ min: 1, max: 80 }),
        (values, buckets) => {
          const x = values.map((_, i) => i);
          const thinned = downSample(x, values, 0, values.length - 1, buckets);
          expect(Math.max(...thinned.y)).toBe(Math.max(...values));
          expect(Math.min(...thinned.y)).toBe(Math.min(...values));
          expect([...thinned.x].sort((a, b) => a - b)).toEqual(thinned.x);
          expect(thinned.x.length).toBeLessThanOrEqual(Math.max(2 * buckets, 3));
        },
      ),
      { seed: 7, numRuns: 200 },
    );
  });

  it('invents no value', () => {
    const values = series(10_000, (i) => Math.sin(i) * 100);
    const known = new Set(values);
    const { y } = downSample(
      series(10_000, (i) => i),
      values,
      0,
      9_999,
      300,
    );
    expect(y.every((each) => known.has(each))).toBe(true);
  });

  it('leaves a gap where stretches have no value, and in a pause of the recording', () => {
    const holed = series(10_000, (i) => (i > 4_000 && i < 6_000 ? NaN : i));
    expect(
      downSample(
        series(10_000, (i) => i),
        holed,
        0,
        9_999,
        100,
      ).y.filter(Number.isNaN).length,
    ).toBeGreaterThan(15);
    const paused = downSample([0, 1, 2, 3, 60, 61, 62], [5, 5, 5, 5, 6, 6, 6], 0, 62, 100);
    expect(paused.y).toEqual([5, 5, 5, 5, NaN, 6, 6, 6]);
  });

  it('is empty outside the samples', () => {
    expect(downSample([0, 1, 2], [1, 2, 3], 10, 20, 5)).toEqual({ x: [], y: [] });
  });
});

describe('recorderChart', () => {
  it.each([
    ['screen', { width: 1100 }],
    ['phone', { width: 360 }],
    ['part of the run', { width: 700, fromS: 850, toS: 950 }],
  ])('keeps its words inside and apart: %s', (_, options) => {
    const figure = recorderChart(run(), options);
    expectWordsInside(figure);
    expectShapesInside(figure);
    expect(overlappingWords(figure)).toEqual([]);
  });

  it('draws the same on screen and on the page', async () => {
    await expectSamePicture(recorderChart(run(), { width: 700 }));
  });

  it('counts time from the POD, else from the emergency application', () => {
    expect(wordsOf(recorderChart(run(), { width: 700 }))).toContain('Time, s from the POD');
    expect(wordsOf(recorderChart({ ...run(), podTimeS: null }, { width: 700 }))).toContain(
      'Time, s from the emergency application',
    );
  });

  it('puts a line at the POD and one at the emergency application in every panel', () => {
    const figure = recorderChart(run(), { width: 1100 });
    const panels = figure.shapes.filter((shape) => shape.type === 'group').length;
    expect(panels).toBe(3);
    const lines = (ink: string, dash: number) =>
      shapesOf(figure).filter(
        (shape) => shape.type === 'line' && shape.stroke?.ink === ink && shape.stroke.dash?.[0] === dash,
      );
    expect(lines('mark', 9)).toHaveLength(panels + 1);
    expect(lines('limit', 3)).toHaveLength(panels + 1);
  });

  it('shows a peak of one sample among a hundred thousand', () => {
    const count = 100_000;
    const data = run(count);
    const speed = series(count, (i) => (i === 51_234 ? 30 : 10));
    const figure = recorderChart({ ...data, samples: { ...data.samples, speed } }, { width: 700 });
    expect(figure.description).toContain('speed 22.4 to 67.1 mph');
    expect(wordsOf(figure)).toContain('Thinned for drawing');
    expect(wordsOf(recorderChart(data, { width: 1100, fromS: 0, toS: 500 }))).not.toContain('Thinned');
  });

  it('keeps a gap in the speed a gap', () => {
    const data = run();
    const speed = series(1000, (i) => (i > 300 && i < 400 ? NaN : 10));
    const figure = recorderChart({ ...data, samples: { time: data.samples.time!, speed } }, { width: 1100 });
    const line = shapesOf(figure).find((shape) => shape.type === 'polyline');
    expect(line?.type === 'polyline' ? runs(line.points).length : 0).toBe(2);
    expect(toSvg(figure)).not.toContain('NaN');
  });

  it.each([
    ['no time', { ...run(), samples: { speed: series(10, () => 1) } }, {}],
    ['no channel', { ...run(), samples: { time: series(10, (i) => i) } }, {}],
    ['a part outside the run', run(), { fromS: 5000, toS: 6000 }],
  ])('says that there is nothing to draw: %s', (_, data, part) => {
    const figure = recorderChart(data as RecorderChartData, { width: 360, ...part });
    expect(wordsOf(figure)).toContain('No samples');
    expectWordsInside(figure);
  });
});

describe('recorderChart of a faulty run', () => {
  const faulty = () => {
    const base = run(600).samples;
    const time = base.time!.map((t) => (t < 200 ? t : t + 60));
    time[400] = time[399]! - 0.5;
    const speed = base.speed!.map((_, i) => (i < 300 ? 5 + i * 0.01 : 8 - (i - 300) * 0.02));
    return recorderChartData(
      { ...base, time, speed },
      {
        system: 'us',
        name: 'lead unit',
        atPod: null,
        authorisedSpeedMs: null,
        speedU: 0.06,
      },
    );
  };

  it('shades gaps, marks backward steps and says both', () => {
    const figure = recorderChart(faulty(), { width: 900 });
    const { description } = figure;
    expect(description).toMatch(/a gap in the recording/);
    expect(description).toMatch(/backward step/);
    expect(wordsOf(figure)).toMatch(/Acceleration/);
  });

  it('is drawn against distance too, on an axis in feet from the start', () => {
    const figure = recorderChart(faulty(), { width: 900, against: 'distance' });
    expect(figure.description).toMatch(/^Distance in ft run from the start/);
    expectShapesInside(figure);
  });
});

describe('a clock that steps back', () => {
  const back = series(200, (i) => (i < 120 ? i : i - 60));
  const samples = {
    time: back,
    speed: series(200, () => 10),
    emergency: series(200, (i) => (i >= 150 ? 1 : 0)),
  };
  const data = recorderChartData(samples, {
    system: 'us',
    name: 'stepped',
    // Sample 140 carries the time of sample 80 as well.
    atPod: { index: 140, timeS: 80, remark: 'by hand' } as never,
    authorisedSpeedMs: null,
    speedU: 0.1,
  });

  it('stays inside the frame though the latest time is not the last', () => {
    for (const against of ['time', 'distance'] as const) {
      const figure = recorderChart(data, { width: 800, against });
      expectShapesInside(figure);
      expectWordsInside(figure, 10);
      expect(wordsOf(figure)).toContain('One backward step of the clock');
    }
  });

  it('puts the POD at its own sample, and not at another of the same time', () => {
    const figure = recorderChart(data, { width: 800, against: 'distance' });
    const lines = shapesOf(figure).filter((shape) => shape.type === 'line');
    const upright = lines.filter(({ x1, x2, y1 }) => x1 === x2 && y1 === 18).map(({ x1 }) => x1);
    // POD at 1,400 m less the step that took no time, of 1,990 m run; emergency 100 m later.
    const perMetre = (800 - 54 - 12) / 1980;
    expect(upright).toHaveLength(2);
    expect(upright[0]).toBeCloseTo(54 + 1390 * perMetre, 0);
    expect(upright[1]).toBeCloseTo(54 + 1490 * perMetre, 0);
  });
});
