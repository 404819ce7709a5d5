import { ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import type { ForceHistory, SimulatedForces } from '../findings/train/simulated-forces';
import type { UnitSystem } from '../readings/unit';
import { downSample } from './down-sample';
import { scaleOf } from './pieces/axis';
import { LETTER, line, pen, words } from './pieces/draw';
import { drawPanel, panelHeadHeight, type Panel, type Series } from './pieces/panel';
import type { Figure, Ink, Shape } from './shapes';
import { textWidth } from './text-width';

const LEFT = 54;
const HEAD = 30;
const PANEL_GAP = 10;

/** Simulated force in both couplers of the first derailed vehicle against time from the POD. */
export function forceHistory(
  simulated: SimulatedForces,
  system: UnitSystem,
  { width, panelHeight = 110 }: { readonly width: number; readonly panelHeight?: number },
): Figure {
  const { timesS, ahead, behind } = simulated;
  const [from, to] = [timesS[0] ?? 0, timesS.at(-1) ?? 0];
  const plot = width - LEFT - 12;
  const x = scaleLinear()
    .domain([from, to])
    .range([LEFT, LEFT + plot]);
  const series = (label: string, ink: Ink, values: Float64Array, dash?: readonly number[]): Series => {
    const thinned = downSample(timesS, values, from, to, Math.floor(plot));
    return {
      label,
      ink,
      marker: null,
      ...(dash === undefined ? {} : { dash }),
      values: thinned.y,
      places: thinned.x.map((each) => x(each)),
    };
  };
  const both = (low: Series, high: Series): Series => ({
    ...low,
    values: [...Array.from(low.values), NaN, ...Array.from(high.values)],
    places: [...Array.from(low.places ?? []), NaN, ...Array.from(high.places ?? [])],
  });
  const panelOf = (title: string, { nominal, low, high }: ForceHistory, ink: Ink): Panel => ({
    title,
    scale: 'force',
    includeZero: true,
    reference: { value: 0, label: 'draft above, buff below' },
    series: [
      series('middle of the range', ink, nominal),
      both(series('ends of the range', ink, low, [3, 3]), series('', ink, high, [3, 3])),
    ],
  });
  const panels = [
    ...(ahead === null ? [] : [panelOf('Coupler ahead of the first derailed vehicle', ahead, 'seriesA')]),
    ...(behind === null ? [] : [panelOf('Coupler behind the first derailed vehicle', behind, 'seriesB')]),
  ];
  let y = HEAD;
  const pod = x(0);
  const drawn = panels.map((panel): Shape => {
    const frame = { x: LEFT, width: plot, y, height: panelHeight, margin: 0 };
    const top = y + panelHeadHeight(panel, frame, system);
    y = top + panelHeight + PANEL_GAP;
    const { shapes } = drawPanel(panel, frame, [LEFT, LEFT + plot], system);
    return {
      type: 'group',
      label: panel.title,
      shapes: [...shapes, line([pod, top], [pod, top + panelHeight], pen('mark', 1.4, [9, 3, 2, 3]))],
    };
  });
  const time = scaleOf('time', system);
  const force = scaleOf('force', system);
  const extremes = (values: Float64Array): string =>
    [Math.min(...values), Math.max(...values)]
      .map((each) => `${Math.round(force.toShown(each))} ${force.unitLabel}`)
      .join(' to ');
  const half = textWidth('POD', LETTER, 'bold') / 2;
  return {
    width,
    height: y + 44,
    title: 'Coupler forces at the first derailed vehicle, simulated',
    description: [
      `Time from ${time.text(Math.round(from))} to ${time.text(Math.round(to))} s from the POD.`,
      ...(ahead === null ? [] : [`Ahead: ${extremes(ahead.nominal)}.`]),
      ...(behind === null ? [] : [`Behind: ${extremes(behind.nominal)}.`]),
      'Draft positive; broken lines are the ends of the range of what was assumed.',
    ].join(' '),
    shapes: [
      line([pod, 18], [pod, HEAD + 2], pen('mark', 1.4, [9, 3, 2, 3])),
      words(Math.min(pod, width - half - 2), 13, 'POD', { anchor: 'middle', bold: true, ink: 'mark' }),
      ...drawn,
      line([LEFT, y], [LEFT + plot, y], pen('ink', 1)),
      ...ticks(from, to, Math.max(3, Math.floor(plot / 70))).flatMap((tick) => {
        const at = x(tick);
        const text = `${tick > 0 ? '+' : ''}${time.text(tick)}`;
        return [
          line([at, y], [at, y + 5], pen('ink', 1)),
          words(Math.min(at, width - textWidth(text, LETTER) / 2 - 1), y + 17, text, { anchor: 'middle' }),
        ];
      }),
      words(LEFT, y + 33, 'Time, s from the POD', { bold: true }),
    ],
  };
}
