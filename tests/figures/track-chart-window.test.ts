import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chartExtent, trackChart, type TrackChartData } from '~/lib/figures/track-chart';
import { chartWindow, paperStretches } from '~/lib/figures/track-chart-window';

const FOOT_M = 0.3048;

const chart = (count: number, spacingM = 4.7244): TrackChartData => ({
  system: 'us',
  positionsM: Array.from({ length: count }, (_, i) => (i - count + 1) * spacingM),
  panels: [
    {
      title: 'Gauge',
      scale: 'crossLength',
      series: [
        {
          label: 'standing',
          ink: 'seriesA',
          marker: 'dot',
          values: Array.from({ length: count }, (_, i) => 1435 + (i % 5)),
          hollow: Array.from({ length: count }, (_, i) => i % 7 === 0),
        },
      ],
    },
  ],
  marks: [{ number: 1, fromM: 0, toM: 2, rail: 'left', label: 'Flange mark', isPod: true }],
  vehicles: [{ label: '31 AB 100', atM: 40 }],
  limitsFrom: '',
  remarks: [],
});

describe('a stretch of the chart', () => {
  it('holds the stations, marks and vehicles on it, each with its own values', () => {
    const data = chart(100);
    const part = chartWindow(data, -50, 10);
    expect(part.positionsM.every((at) => at >= -50 && at <= 10)).toBe(true);
    expect(part.positionsM).toHaveLength(11);
    expect(part.panels[0]?.series[0]?.values).toEqual(
      Array.from({ length: 11 }, (_, i) => 1435 + ((i + 89) % 5)),
    );
    expect(part.marks).toHaveLength(1);
    expect(part.vehicles).toEqual([]);
    expect(chartWindow(data, -300, -200).marks).toEqual([]);
  });

  it('is drawn for any stretch, the POD only where it lies on it', () => {
    const words = (from: number, to: number): string =>
      JSON.stringify(trackChart(chartWindow(chart(100), from, to), { width: 1120 }).shapes);
    expect(words(-50, 10)).toContain('"POD"');
    expect(words(-300, -200)).not.toContain('"POD"');
  });
});

describe('the chart on paper', () => {
  it('has one of the listed scales and loses no station, at any length', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 900 }), fc.integer({ min: 300, max: 900 }), (count, width) => {
        const data = chart(count);
        const { scale, stretches } = paperStretches(data, width);
        expect(scale.label).toMatch(/^1 in = (10|20|50|100|200|500|1000|2000) ft/);
        // The larger ones are for what one page holds.
        if (/^1 in = (10|20) ft/.test(scale.label)) expect(stretches).toHaveLength(1);
        const all = stretches.flatMap(({ positionsM }) => positionsM);
        expect(new Set(all)).toEqual(new Set(data.positionsM));
        expect(stretches.length).toBeLessThanOrEqual(4);
      }),
      { seed: 50, numRuns: 60 },
    );
  });

  it('is drawn larger where one page holds it', () => {
    // 9 in of plot at 20 ft to the inch hold 180 ft: a sheet of 2 stations with the vehicle past the POD.
    expect(paperStretches(chart(2), 864).scale.label).toBe('1 in = 20 ft (1:240)');
  });

  it('is 50 ft to the inch for a usual sheet, split over pages', () => {
    // 40 stations, 604 ft, and a vehicle 131 ft past the POD: 10 in of plot hold 500 ft.
    const { scale, stretches } = paperStretches(chart(40), 960);
    expect(scale.label).toBe('1 in = 50 ft (1:600)');
    expect(stretches).toHaveLength(2);
    for (const { window } of stretches)
      expect(((window?.toM ?? 0) - (window?.fromM ?? 0)) / FOOT_M).toBeCloseTo(500, 6);
    expect(chartExtent(chart(40))[1]).toBeGreaterThan(40);
  });
});
