import { ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { scaleOf } from './pieces/axis';
import { LETTER, line, pen, words } from './pieces/draw';
import { drawPanel, panelHeadHeight, type Panel, type Series } from './pieces/panel';
import type { Figure, Ink, Shape } from './shapes';
import { textWidth } from './text-width';
import type { Band, TrainProfileData } from './train-profile-data';

const LEFT = 54;
const HEAD = 30;
const PANEL_GAP = 10;

/** Both ends of the range as one line with a break between, so that the key names them once. */
const bandSeries = (band: Band, ink: Ink, places: readonly number[]): readonly Series[] => [
  { label: 'middle of the range', ink, marker: null, values: band.mean, places },
  {
    label: '5th and 95th percentile',
    ink,
    marker: null,
    dash: [3, 3],
    values: [...band.low, NaN, ...band.high],
    places: [...places, places.at(-1) ?? NaN, ...places],
  },
];

const extremes = (values: readonly number[]): readonly [number, number] => {
  const known = values.filter(Number.isFinite);
  return [Math.min(...known), Math.max(...known)];
};

/**
 * Along the train, head end at the left: weight of every vehicle, weight behind it and, where they
 * could be computed, steady coupler forces at the POD with their range and the L/V that they put
 * on a truck side. The first derailed vehicle is marked.
 */
export function trainProfile(
  data: TrainProfileData,
  { width, panelHeight = 84 }: { readonly width: number; readonly panelHeight?: number },
): Figure {
  const { system, middlesM, couplersM, first, massesKg, trailingKg, forcesKn, ratios, positions } = data;
  const { grades, curvatures } = data;
  const title = 'Weight and forces along the train';
  const last = middlesM.at(-1);
  if (last === undefined || massesKg.every(Number.isNaN)) {
    return {
      width,
      height: 50,
      title,
      description: 'No weights are recorded.',
      shapes: [words(8, 28, 'No weights are recorded.', { ink: 'faint' })],
    };
  }
  const plot = width - LEFT - 12;
  const x = scaleLinear()
    .domain([0, last + middlesM[0]!])
    .range([LEFT, LEFT + plot]);
  const middles = middlesM.map((each) => x(each));
  const couplers = couplersM.map((each) => x(each));
  const panels: Panel[] = [
    {
      title: 'Weight of each vehicle',
      scale: 'mass',
      includeZero: true,
      series: [{ label: 'weight', ink: 'seriesA', marker: null, style: 'bars', values: massesKg }],
    },
    {
      title: 'Weight behind each vehicle',
      scale: 'mass',
      includeZero: true,
      series: [{ label: 'weight behind', ink: 'seriesA', marker: null, values: trailingKg, places: middles }],
    },
    ...(grades === null
      ? []
      : [
          {
            title: 'Grade under each vehicle',
            scale: 'share' as const,
            includeZero: true,
            reference: { value: 0, label: 'uphill above' },
            series: [
              { label: 'grade', ink: 'seriesA' as const, marker: null, values: grades, places: middles },
            ],
          },
        ]),
    ...(curvatures === null
      ? []
      : [
          {
            title: 'Curvature under each vehicle',
            scale: 'curvature' as const,
            includeZero: true,
            reference: { value: 0, label: 'hand of the POD above' },
            series: [
              {
                label: 'curvature',
                ink: 'seriesA' as const,
                marker: null,
                values: curvatures,
                places: middles,
              },
            ],
          },
        ]),
    ...(forcesKn === null
      ? []
      : [
          {
            title: 'Steady coupler force at the POD',
            scale: 'force' as const,
            includeZero: true,
            reference: { value: 0, label: 'draft above, buff below' },
            series: bandSeries(forcesKn, 'seriesB', couplers),
          },
        ]),
    ...(ratios === null
      ? []
      : [
          {
            title: 'L/V of the worse truck side',
            scale: 'ratio' as const,
            includeZero: true,
            series: bandSeries(ratios, 'seriesC', middles),
          },
        ]),
  ];
  const mark = first === null ? null : middles[first]!;
  let y = HEAD;
  const drawn = panels.map((panel): Shape => {
    const frame = { x: LEFT, width: plot, y, height: panelHeight, margin: 0 };
    const top = y + panelHeadHeight(panel, frame, system);
    y = top + panelHeight + PANEL_GAP;
    const { shapes } = drawPanel(panel, frame, middles, system);
    return {
      type: 'group',
      label: panel.title,
      shapes: [
        ...shapes,
        ...(mark === null
          ? []
          : [line([mark, top], [mark, top + panelHeight], pen('mark', 1.4, [9, 3, 2, 3]))]),
      ],
    };
  });
  const firstText = `first to derail${first === null || positions[first] === null ? '' : ` (${positions[first]})`}`;
  const half = textWidth(firstText, LETTER, 'bold') / 2;
  const along = scaleOf('alongTrack', system);
  const perUnit = 1 / along.toShown(1);
  const marks = ticks(0, (last + middlesM[0]!) / perUnit, Math.max(3, Math.floor(plot / 80)));
  return {
    width,
    height: y + 44,
    title,
    description: describe(data),
    shapes: [
      ...(mark === null
        ? []
        : [
            line([mark, 18], [mark, HEAD + 2], pen('mark', 1.4, [9, 3, 2, 3])),
            words(Math.min(Math.max(mark, half + 2), width - half - 2), 13, firstText, {
              anchor: 'middle',
              bold: true,
              ink: 'mark',
            }),
          ]),
      ...drawn,
      line([LEFT, y], [LEFT + plot, y], pen('ink', 1)),
      ...marks.flatMap((tick) => {
        const at = x(tick * perUnit);
        const text = along.text(tick);
        return [
          line([at, y], [at, y + 5], pen('ink', 1)),
          words(Math.min(at, width - textWidth(text, LETTER) / 2 - 1), y + 17, text, { anchor: 'middle' }),
        ];
      }),
      words(LEFT, y + 33, `Distance from the head end, ${along.unitLabel}`, { bold: true }),
    ],
  };
}

function describe({
  system,
  middlesM,
  massesKg,
  forcesKn,
  ratios,
  first,
  positions,
}: TrainProfileData): string {
  const mass = scaleOf('mass', system);
  const force = scaleOf('force', system);
  const massText = (kg: number): string => `${Math.round(mass.toShown(kg))} ${mass.unitLabel}`;
  const forceText = (kn: number): string => `${Math.round(force.toShown(kn))} ${force.unitLabel}`;
  const [light, heavy] = extremes(massesKg);
  const parts = [`${middlesM.length} vehicles from ${massText(light)} to ${massText(heavy)}.`];
  if (first !== null) parts.push(`First to derail: position ${positions[first] ?? 'not known'}.`);
  if (forcesKn !== null) {
    const [least, most] = extremes(forcesKn.mean);
    parts.push(`Steady coupler force from ${forceText(least)} to ${forceText(most)}, draft positive.`);
  }
  if (ratios !== null) parts.push(`L/V of a truck side up to ${extremes(ratios.mean)[1].toFixed(2)}.`);
  return parts.join(' ');
}
