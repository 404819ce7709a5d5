import { ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { firstEmergency, type RunSamples } from '../case/recorder-moments';
import type { UnitSystem } from '../readings/unit';
import { downSample } from './down-sample';
import { scaleOf, type ScaleKind } from './pieces/axis';
import { LETTER, line, lines, pen, words } from './pieces/draw';
import { drawPanel, panelHeadHeight, type Panel, type Series } from './pieces/panel';
import { shiftApart } from './pieces/shift-labels';
import type { Figure, Ink, Shape } from './shapes';
import { textWidth, wrapText } from './text-width';

export type RecorderChartData = {
  readonly system: UnitSystem;
  readonly name: string;
  /** By channel id (lib/case/recorder), canonical units; `time` ascending. */
  readonly samples: RunSamples;
  /** When the POD was passed, on the run's own time, s; null when it is not known. */
  readonly podTimeS: number | null;
  /** Drawn as a limit on the speed; null when not recorded. */
  readonly authorisedSpeedMs: number | null;
};

export type RecorderChartOptions = {
  readonly width: number;
  readonly panelHeight?: number;
  /** Part of the run, on its own time, s; the whole run when left out. */
  readonly fromS?: number;
  readonly toS?: number;
};

type Look = {
  readonly channel: string;
  readonly label: string;
  readonly ink: Ink;
  readonly dash?: readonly number[];
  readonly step?: boolean;
};
type Group = { readonly title: string; readonly scale: ScaleKind; readonly looks: readonly Look[] };

/** What is drawn together, from top to bottom; a group without any of its channels is left out. */
const GROUPS: readonly Group[] = [
  { title: 'Speed', scale: 'speed', looks: [{ channel: 'speed', label: 'speed', ink: 'seriesA' }] },
  {
    title: 'Throttle and dynamic brake',
    scale: 'notch',
    looks: [
      { channel: 'throttle', label: 'throttle notch', ink: 'seriesA', step: true },
      {
        channel: 'dynamicBrakeNotch',
        label: 'dynamic brake notch',
        ink: 'seriesB',
        dash: [5, 3],
        step: true,
      },
    ],
  },
  {
    title: 'Dynamic brake, share of full',
    scale: 'share',
    looks: [{ channel: 'dynamicBrakeShare', label: 'dynamic brake', ink: 'seriesB', dash: [5, 3] }],
  },
  {
    title: 'Tractive effort',
    scale: 'force',
    looks: [{ channel: 'tractiveEffort', label: 'tractive effort', ink: 'seriesC' }],
  },
  {
    title: 'Brake pressures',
    scale: 'pressure',
    looks: [
      { channel: 'brakePipe', label: 'brake pipe', ink: 'seriesA' },
      { channel: 'endOfTrainPressure', label: 'brake pipe, rear', ink: 'seriesC', dash: [7, 3] },
      { channel: 'brakeCylinder', label: 'brake cylinder', ink: 'seriesB', dash: [2, 2] },
      { channel: 'independentBrake', label: 'independent brake', ink: 'warn', dash: [8, 3, 2, 3] },
    ],
  },
];

const LEFT = 54;
const HEAD = 34;
const PANEL_GAP = 10;
const LONG_S = 1200;

const finite = (value: number | undefined): boolean => value !== undefined && Number.isFinite(value);
const hasData = (values: Float64Array | undefined): values is Float64Array => values?.some(finite) === true;

type Moment = {
  readonly timeS: number;
  readonly label: string;
  readonly ink: Ink;
  readonly dash: readonly number[];
};

function momentsOf({ samples, podTimeS }: RecorderChartData): readonly Moment[] {
  const emergency = firstEmergency(samples);
  const at = emergency === null ? undefined : samples.time?.[emergency];
  return [
    ...(podTimeS === null
      ? []
      : [{ timeS: podTimeS, label: 'POD', ink: 'mark' as const, dash: [9, 3, 2, 3] }]),
    ...(finite(at) ? [{ timeS: at!, label: 'emergency', ink: 'limit' as const, dash: [3, 2] }] : []),
  ];
}

/** Zero of the time axis: the POD, else the emergency application, else the first sample. */
function zeroOf(moments: readonly Moment[], from: number): { readonly timeS: number; readonly name: string } {
  const [first] = moments;
  if (first === undefined) return { timeS: from, name: 'from the start of the part shown' };
  return {
    timeS: first.timeS,
    name: first.label === 'POD' ? 'from the POD' : 'from the emergency application',
  };
}

const empty = (width: number, name: string): Figure => ({
  width,
  height: 56,
  title: `Event recorder, ${name}`,
  description: 'The run has no samples in the part asked for.',
  shapes: [words(8, 32, 'No samples in the part asked for.', { ink: 'faint' })],
});

function authorisedText(speedMs: number, system: UnitSystem): string {
  const scale = scaleOf('speed', system);
  return `authorised ${Math.round(scale.toShown(speedMs))} ${scale.unitLabel}`;
}

/** Extremes of a channel in words. */
function channelWords(label: string, kind: ScaleKind, values: ArrayLike<number>, system: UnitSystem): string {
  const scale = scaleOf(kind, system);
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0; i < values.length; i += 1) {
    if (!Number.isFinite(values[i])) continue;
    low = Math.min(low, values[i]!);
    high = Math.max(high, values[i]!);
  }
  const text = (value: number): string => scale.text(Number(scale.toShown(value).toFixed(1)));
  const unit = kind === 'notch' ? '' : ` ${scale.unitLabel}`;
  return `${label} ${text(low)} to ${text(high)}${unit}`;
}

/**
 * Speed, throttle, brakes and pressures of one run against time, on one axis. Long runs are thinned
 * to the lowest and highest value of each pixel, so that peaks stay; pauses in the recording stay
 * gaps. Time is counted from the POD when its time is known.
 */
export function recorderChart(data: RecorderChartData, options: RecorderChartOptions): Figure {
  const { samples, system, name, authorisedSpeedMs } = data;
  const { width, panelHeight = 90 } = options;
  const time = samples.time;
  if (time === undefined || !hasData(time)) return empty(width, name);
  const last = time.length - 1;
  const from = Math.max(options.fromS ?? -Infinity, time[0]!);
  const to = Math.min(options.toS ?? Infinity, time[last]!);
  if (!(to > from)) return empty(width, name);

  const margin = width < 600 || authorisedSpeedMs === null ? 0 : 112;
  const plot = width - LEFT - Math.max(margin, 12);
  const x = scaleLinear()
    .domain([from, to])
    .range([LEFT, LEFT + plot]);
  const groups = GROUPS.flatMap((group) => {
    const looks = group.looks.filter(({ channel }) => hasData(samples[channel]));
    return looks.length === 0 ? [] : [{ ...group, looks }];
  });
  if (groups.length === 0) return empty(width, name);
  const panels = groups.map(({ title, scale, looks }): Panel => {
    const series = looks.map(({ channel, label, ink, dash, step }): Series => {
      const thinned = downSample(time, samples[channel]!, from, to, Math.floor(plot));
      return {
        label,
        ink,
        dash,
        marker: null,
        style: step ? 'step' : 'line',
        values: thinned.y,
        places: thinned.x.map((each) => x(each)),
      };
    });
    const limits =
      scale === 'speed' && authorisedSpeedMs !== null
        ? [
            {
              sense: 'max' as const,
              value: authorisedSpeedMs,
              label: authorisedText(authorisedSpeedMs, system),
            },
          ]
        : [];
    return { title, scale, series, limits, includeZero: true };
  });

  const moments = momentsOf(data).filter(({ timeS }) => timeS >= from && timeS <= to);
  const zero = zeroOf(momentsOf(data), from);
  const labels = moments.map(({ label }) => textWidth(label, LETTER, 'bold') + 10);
  const labelXs = shiftApart(
    moments.map(({ timeS }) => x(timeS)),
    labels,
    LEFT,
    LEFT + plot,
  );
  const upright = (top: number, bottom: number): Shape[] =>
    moments.map(({ timeS, ink, dash }) => line([x(timeS), top], [x(timeS), bottom], pen(ink, 1.4, dash)));

  let y = HEAD;
  const drawn = panels.map((panel): Shape => {
    const frame = { x: LEFT, width: plot, y, height: panelHeight, margin };
    const top = y + panelHeadHeight(panel, frame, system);
    y = top + panelHeight + PANEL_GAP;
    const { shapes } = drawPanel(panel, frame, [LEFT, LEFT + plot], system);
    return { type: 'group', label: panel.title, shapes: [...shapes, ...upright(top, top + panelHeight)] };
  });

  const perUnit = to - from > LONG_S ? 60 : 1;
  const unit = perUnit === 60 ? 'min' : 's';
  const shown = [(from - zero.timeS) / perUnit, (to - zero.timeS) / perUnit] as const;
  const scale = scaleOf('time', system);
  const marks = ticks(shown[0], shown[1], Math.max(3, Math.floor(plot / 70)));
  const dropped = time.filter((each) => each >= from && each <= to).length > 2 * Math.floor(plot);
  const note = dropped ? 'Thinned for drawing: lowest and highest value of each step are kept.' : '';
  const noteLines = wrapText(note, width - 16, LETTER);
  return {
    width,
    height: y + 46 + noteLines.length * 14,
    title: `Event recorder, ${name}`,
    description: [
      `Time in ${unit} ${zero.name}, ${scale.text(Math.round(shown[0]))} to ${scale.text(Math.round(shown[1]))}.`,
      ...groups.map(
        (group, g) =>
          `${group.title}: ${group.looks.map((look, i) => channelWords(look.label, group.scale, panels[g]!.series[i]!.values, system)).join('; ')}.`,
      ),
      ...(authorisedSpeedMs === null ? [] : ['The authorised speed is drawn as a limit.']),
      note,
    ]
      .filter(Boolean)
      .join(' '),
    shapes: [
      ...moments.flatMap(({ timeS, label, ink, dash }, i) => [
        line([x(timeS), 18], [x(timeS), HEAD + 2], pen(ink, 1.4, dash)),
        words(labelXs[i]!, 14, label, { anchor: 'middle', bold: true, ink }),
      ]),
      ...drawn,
      line([LEFT, y], [LEFT + plot, y], pen('ink', 1)),
      ...marks.flatMap((tick) => {
        const at = x(tick * perUnit + zero.timeS);
        const text = `${tick > 0 ? '+' : ''}${scale.text(tick)}`;
        return [
          line([at, y], [at, y + 5], pen('ink', 1)),
          words(Math.min(at, width - textWidth(text, LETTER) / 2 - 1), y + 17, text, { anchor: 'middle' }),
        ];
      }),
      words(LEFT, y + 33, `Time, ${unit} ${zero.name}`, { bold: true }),
      ...lines(8, y + 52, noteLines, { ink: 'faint' }),
    ],
  };
}
