import { describe, expect, it } from 'vitest';
import { runs } from '~/lib/figures/runs';
import { toSvg } from '~/lib/figures/svg';
import { paperScale, trackChart, type TrackChartData } from '~/lib/figures/track-chart';
import { NO_LIMITS, trackChartData, type ChartLimits } from '~/lib/figures/track-chart-data';
import { ruleSetById } from '~/lib/rules';
import { limitsFor } from '~/lib/rules/apply';
import { expectShapesInside, expectWordsInside, overlappingWords, shapesOf, wordsOf } from './bounds';
import { curveRecord, recordBuilder } from './invented-record';
import { expectSamePicture } from './same-picture';

const rules = ruleSetById('us-49cfr213')!;
const CLASS_3: ChartLimits = {
  from: 'Class 3, 49 CFR part 213',
  of: (quantity) => limitsFor(rules, '3', quantity, { onCurve: true }),
};
const data = trackChartData(curveRecord(), CLASS_3);

const onePanel = (values: number[], hollow?: boolean[]): TrackChartData => ({
  system: 'metric',
  positionsM: values.map((_, i) => (i - 2) * 5),
  panels: [
    {
      title: 'Gauge',
      scale: 'crossLength',
      series: [{ label: 'g', ink: 'seriesA', marker: 'dot', values, hollow }],
    },
  ],
  marks: [],
  vehicles: [],
  limitsFrom: '',
  remarks: [],
});

const seriesLines = (chart: TrackChartData): number[] =>
  shapesOf(trackChart(chart, { width: 1100 }))
    .filter((shape) => shape.type === 'polyline' && !shape.closed && shape.stroke?.ink === 'seriesA')
    .map((shape) => (shape.type === 'polyline' ? runs(shape.points).map((run) => run.length / 2) : []))
    .flat();

const dots = (chart: TrackChartData) =>
  shapesOf(trackChart(chart, { width: 1100 })).filter(
    (shape) => shape.type === 'circle' && (shape.fill === 'seriesA' || shape.stroke?.ink === 'seriesA'),
  );

describe('trackChart', () => {
  it.each([
    ['screen', { width: 1100 }],
    ['phone', { width: 360 }],
    ['paper', { width: 700, lengthScale: 'paper' }],
  ] as const)('keeps its words inside and apart on %s', (_, options) => {
    const figure = trackChart(data, options);
    expectWordsInside(figure);
    expectShapesInside(figure);
    expect(overlappingWords(figure)).toEqual([]);
  });

  it('draws the same on screen and on the page', async () => {
    await expectSamePicture(trackChart(data, { width: 700, lengthScale: 'paper' }));
  });

  it('leaves a gap where a station was not read and joins nothing across it', () => {
    expect(seriesLines(onePanel([1435, 1436, NaN, 1437, 1438, 1439]))).toEqual([2, 3]);
    // One marker per reading, and one in the key.
    expect(dots(onePanel([1435, NaN, 1437]))).toHaveLength(2 + 1);
  });

  it('shows disturbed stations hollow and joins them with a line of their own', () => {
    const chart = onePanel([1435, 1436, 1437, 1438], [false, false, true, true]);
    expect(dots(chart).filter((shape) => 'fill' in shape && shape.fill === 'paper')).toHaveLength(2);
    expect(seriesLines(chart)).toEqual([2, 2, 2]);
  });

  it('says that a panel was not measured and keeps its place', () => {
    expect(wordsOf(trackChart(onePanel([NaN, NaN, NaN]), { width: 1100 }))).toContain('Not measured');
    expect(trackChart(onePanel([NaN, NaN, NaN]), { width: 1100 }).height).toBe(
      trackChart(onePanel([1, 2, 3]), { width: 1100 }).height,
    );
  });

  it('puts the POD at station 0 of every panel', () => {
    const figure = trackChart(data, { width: 1100 });
    const lines = shapesOf(figure).filter((shape) => shape.type === 'line' && shape.stroke?.dash?.[0] === 9);
    expect(lines).toHaveLength(data.panels.length + 1);
    expect(new Set(lines.map((shape) => (shape.type === 'line' ? shape.x1 : 0))).size).toBe(1);
  });

  it('labels every axis with its unit in the units of the case', () => {
    const us = wordsOf(trackChart(data, { width: 1100 }));
    for (const text of [
      'Gauge, in',
      'Crosslevel, in',
      'Curvature, degrees',
      'Station, ft from the POD',
      'most 57 3/4 in',
    ])
      expect(us).toContain(text);
    const metric = wordsOf(
      trackChart(trackChartData(curveRecord(44, { units: 'metric' }), CLASS_3), { width: 1100 }),
    );
    for (const text of ['Gauge, mm', 'Curvature, 1/km', 'Station, m from the POD', 'most 1467 mm'])
      expect(metric).toContain(text);
  });

  it('says its paper scale on the drawing and in the description, and keeps to it', () => {
    const figure = trackChart(data, { width: 700, lengthScale: 'paper' });
    expect(wordsOf(figure)).toContain('Scale along the track 1 in = 150 ft (1:1800)');
    expect(figure.description).toContain('1 in = 150 ft (1:1800)');
    const ticks = shapesOf(figure).filter(
      (shape) => shape.type === 'text' && ['−100', '+100'].includes(shape.text),
    );
    const [a, b] = ticks.map((shape) => (shape.type === 'text' ? shape.x : 0)) as [number, number];
    expect(b - a).toBeCloseTo((200 / 150) * 96, 6);
  });

  it('chooses the largest listed scale that fits', () => {
    expect(paperScale(152.4, 960, 'us').label).toBe('1 in = 50 ft (1:600)');
    expect(paperScale(152.4, 959, 'us').label).toBe('1 in = 60 ft (1:720)');
    expect(paperScale(100, 756, 'metric').label).toBe('1:500');
    expect(paperScale(100, 755, 'metric').label).toBe('1:750');
  });

  it('says what to do when there is no station', () => {
    const figure = trackChart({ ...data, positionsM: [] }, { width: 1100 });
    expect(figure.description).toContain('No track station');
    expectWordsInside(figure);
  });

  it('draws one station, and 400 stations without a NaN in the markup', () => {
    expectWordsInside(trackChart(onePanel([1435]), { width: 360 }));
    expect(toSvg(trackChart(trackChartData(curveRecord(400), CLASS_3), { width: 1100 }))).not.toMatch(
      /NaN|Infinity/,
    );
  });
});

describe('trackChartData', () => {
  const panel = (title: string) => data.panels.find((each) => each.title.startsWith(title))!;

  it('marks stations beyond the limit, as read and with movement', () => {
    const [standing, moved] = panel('Gauge').series;
    expect(standing!.beyond!.filter(Boolean)).toHaveLength(0);
    expect(moved!.beyond!.filter(Boolean).length).toBeGreaterThan(3);
  });

  it('adds only movement that was seen', () => {
    const [standing, moved] = panel('Gauge').series;
    const at = data.positionsM.findIndex((m) => Math.abs(m + 4 * 15.5 * 0.3048) < 0.01);
    expect(moved!.values[at]! - standing!.values[at]!).toBeCloseTo(0.375 * 25.4, 9);
    expect(moved!.values[0]).toBeNaN();
  });

  it('leaves disturbed stations out of the running average', () => {
    const uniform = panel('Alinement').series[1]!;
    expect(uniform.values[data.positionsM.length - 1]).toBeNaN();
  });

  it('prefers an undisturbed reading to a disturbed one of the same place', () => {
    const { entity, reading, build } = recordBuilder();
    const id = entity('station', { name: '0', disturbance: 'notSaid' });
    reading('station', id, 'stationPosition', 0, { disturbance: 'undisturbed' });
    reading('station', id, 'gauge', 1450, { disturbance: 'disturbed' });
    expect(trackChartData(build()).panels[0]!.series[0]).toMatchObject({ values: [1450], hollow: [true] });
    reading('station', id, 'gauge', 1440, { disturbance: 'undisturbed' });
    expect(trackChartData(build()).panels[0]!.series[0]).toMatchObject({ values: [1440], hollow: [false] });
  });

  it('draws the running average over uneven stations where points lie between them, and says so', () => {
    const { entity, reading, build } = recordBuilder();
    for (const position of [-30, -26, -22, -17, -13, -9, -4, 0, 25]) {
      const id = entity('station', { name: String(position), disturbance: 'undisturbed' });
      reading('station', id, 'stationPosition', position);
      reading('station', id, 'midOrdinate62', 100 + position);
    }
    const uneven = trackChartData(build(), CLASS_3);
    expect(uneven.remarks.join()).toContain('read off the line joining them');
    const uniform = uneven.panels[2]!.series[1]!.values;
    // A steady spiral is its own average; nothing is carried over the 25 m to the last station.
    expect(uniform[4]).toBeCloseTo(87, 9);
    expect(uniform[8]).toBeNaN();
  });

  it('draws no limit when none is in force', () => {
    expect(trackChartData(curveRecord(), NO_LIMITS).panels.flatMap((each) => each.limits ?? [])).toEqual([]);
  });
});

describe('what the chart draws as limits', () => {
  const panel = (title: string, from = data) => from.panels.find((each) => each.title === title);

  it('is the elevation and the reverse elevation on a curve, and the deviation from zero on tangent', () => {
    const labels = (record: ReturnType<typeof curveRecord>, onCurve: boolean) =>
      panel(
        'Crosslevel',
        trackChartData(record, {
          from: 'x',
          of: (quantity) => limitsFor(rules, '3', quantity, { onCurve }),
        }),
      )?.limits?.map(({ label }) => label);
    expect(labels(curveRecord(), true)).toEqual(['most 7 in', '−1 3/4 in reverse']);
    const tangent = { ...curveRecord(), fields: { ...curveRecord().fields, alignment: 'tangent' } };
    expect(labels(tangent, false)).toEqual(['+1 3/4 in', '−1 3/4 in']);
  });

  it('is the fewest sound ties where they were counted, those with fewer ringed', () => {
    const record = recordBuilder();
    [0, 1, 2].forEach((step) => {
      const id = record.entity('station', { name: String(step), disturbance: 'undisturbed' });
      record.reading('station', id, 'stationPosition', step * 5);
      record.reading('station', id, 'soundTies', 9 + step);
    });
    const ties = panel(
      'Ties and fastenings in 39 ft',
      trackChartData(record.build(), { from: 'x', of: () => [], leastTies: [10, 10, 10] }),
    );
    expect(ties?.limits).toEqual([{ sense: 'min', value: 10, label: 'least 10 sound' }]);
    expect(ties?.series[0]).toMatchObject({ label: 'sound ties', beyond: [true, false, false] });
  });

  it('is a band about uniform alinement', () => {
    const bands = shapesOf(trackChart(data, { width: 1100 })).filter(
      (shape) => shape.type === 'polyline' && shape.closed && shape.fill === 'shade',
    );
    expect(bands.length).toBeGreaterThan(0);
  });
});
