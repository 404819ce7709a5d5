import { scaleLinear } from 'd3-scale';
import type { Shape } from '../shapes';
import { box, line, pen, words, type Point } from './draw';
import type { Rect } from './place-labels';

export type PlotAxis = {
  readonly from: number;
  readonly to: number;
  readonly ticks: number;
  readonly text: (value: number) => string;
};

export type Plot = {
  readonly at: (x: number, y: number) => Point;
  readonly shapes: readonly Shape[];
};

/** The frame of a plot with its grid, the numbers left of it and, if asked, below it. */
export function plotFrame(frame: Rect, x: PlotAxis, y: PlotAxis, numbersBelow: boolean): Plot {
  const [right, bottom] = [frame.x + frame.width, frame.y + frame.height];
  const across = scaleLinear().domain([x.from, x.to]).range([frame.x, right]);
  const up = scaleLinear().domain([y.from, y.to]).range([bottom, frame.y]);
  return {
    at: (px, py) => [across(px), up(py)],
    shapes: [
      ...across
        .ticks(x.ticks)
        .flatMap((tick) => [
          line([across(tick), frame.y], [across(tick), bottom], pen('faint', tick === 0 ? 0.9 : 0.3)),
          ...(numbersBelow ? [words(across(tick), bottom + 14, x.text(tick), { anchor: 'middle' })] : []),
        ]),
      ...up
        .ticks(y.ticks)
        .flatMap((tick) => [
          line([frame.x, up(tick)], [right, up(tick)], pen('faint', tick === 0 ? 0.9 : 0.3)),
          words(frame.x - 5, up(tick) + 4, y.text(tick), { anchor: 'end' }),
        ]),
      box(frame.x, frame.y, frame.width, frame.height, { stroke: pen('faint', 0.8) }),
    ],
  };
}

/** A number as it stands on an axis: the digits of its step, a true minus sign. */
export const axisText = (value: number): string =>
  String(Math.abs(Number(value.toPrecision(6)))).replace(/^/, value < 0 ? '−' : '');
