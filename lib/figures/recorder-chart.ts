import { extent, ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { firstEmergency, type RunSamples } from '../case/recorder-moments';
import type { UnitSystem } from '../readings/unit';
import type { ClockFaults } from '../train/clock-faults';
import type { SlackEvent } from '../train/slack-events';
import { downSample } from './down-sample';
import { scaleOf, type ScaleKind } from './pieces/axis';
import { area, box, LETTER, line, lines, pen, words } from './pieces/draw';
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
  /** The sample it was passed at, when it is known. */
  readonly podIndex?: number;
  /** Drawn as a limit on the speed; null when not recorded. */
  readonly authorisedSpeedMs: number | null;
  /** How the POD line was placed, for its description. */
  readonly podPlacedBy?: string;
  /** m/s², one per sample; drawn below the speed. */
  readonly acceleration?: Float64Array;
  /** Distance run by the recording vehicle, m, from the POD or else from the first sample; ascending. */
  readonly alongM?: Float64Array;
  readonly slack?: readonly SlackEvent[];
  readonly faults?: ClockFaults;
};

export type RecorderChartOptions = {
  readonly width: number;
  readonly panelHeight?: number;
  /** Against distance run instead of time; needs `alongM`. */
  readonly against?: 'time' | 'distance';
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

/** Not a channel of the recorder: worked out from its speed. */
const ACCELERATION = 'acceleration';

/** What is drawn together, from top to bottom; a group without any of its channels is left out. */
const GROUPS: readonly Group[] = [
  { title: 'Speed', scale: 'speed', looks: [{ channel: 'speed', label: 'speed', ink: 'seriesA' }] },
  {
    title: 'Acceleration from the speed',
    scale: 'acceleration',
    looks: [{ channel: ACCELERATION, label: 'over six seconds', ink: 'seriesC' }],
  },
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
  /** The sample, where it is known: the clock may show one time twice. */
  readonly index: number | null;
  readonly label: string;
  readonly ink: Ink;
  readonly dash: readonly number[];
};

function momentsOf({ samples, podTimeS, podIndex }: RecorderChartData): readonly Moment[] {
  const emergency = firstEmergency(samples);
  const at = emergency === null ? undefined : samples.time?.[emergency];
  return [
    ...(podTimeS === null
      ? []
      : [
          {
            timeS: podTimeS,
            index: podIndex ?? null,
            label: 'POD',
            ink: 'mark' as const,
            dash: [9, 3, 2, 3],
          },
        ]),
    ...(finite(at)
      ? [{ timeS: at!, index: emergency, label: 'emergency', ink: 'limit' as const, dash: [3, 2] }]
      : []),
  ];
}

/** Slack events stand as small signs over the first panel: too many for lines with names. */
const slackSign = ({ kind }: SlackEvent, x: number, y: number): Shape[] =>
  kind === 'handling'
    ? [line([x - 4, y], [x + 4, y], pen('warn', 1.8)), line([x, y - 4], [x, y + 4], pen('warn', 1.8))]
    : [
        area(
          [
            [x - 4, y - 4],
            [x + 4, y - 4],
            [x, y + 4],
          ],
          'paper',
          pen('warn', 1.5),
        ),
      ];

/** What the signs mean and how many there are; '' when there are none. */
function slackWords(slack: readonly SlackEvent[]): string {
  const bends = slack.filter(({ kind }) => kind === 'speedBend').length;
  const changes = slack.length - bends;
  return [
    ...(bends > 0 ? [`▽ slack event by rule, the speed bends (${bends})`] : []),
    ...(changes > 0 ? [`+ power and dynamic brake change over (${changes})`] : []),
  ].join('; ');
}

function faultWords(faults: ClockFaults | undefined): string {
  if (faults === undefined) return '';
  const { gaps, backward } = faults;
  return [
    ...(gaps.length > 0
      ? [`Shaded: ${gaps.length === 1 ? 'a gap' : `${gaps.length} gaps`} in the recording.`]
      : []),
    ...(backward.length > 0
      ? [
          `${backward.length === 1 ? 'One backward step' : `${backward.length} backward steps`} of the clock, marked by dotted lines; the times are kept as they are.`,
        ]
      : []),
  ].join(' ');
}

/** The place on the other axis of the first sample at or after a time. */
function placeAt(time: Float64Array, places: Float64Array, timeS: number): number {
  const index = time.findIndex((each) => each >= timeS);
  return index < 0 ? NaN : (places[index] ?? NaN);
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
 * Speed, acceleration, throttle, brakes and pressures of one run against time or distance, on one axis. Long runs are thinned
 * to the lowest and highest value of each pixel, so that peaks stay; pauses in the recording stay
 * gaps. Time is counted from the POD when its time is known.
 */
export function recorderChart(data: RecorderChartData, options: RecorderChartOptions): Figure {
  const { system, name, authorisedSpeedMs, slack = [], faults } = data;
  const { width, panelHeight = 90, against = 'time' } = options;
  const time = data.samples.time;
  if (time === undefined || !hasData(time)) return empty(width, name);
  const samples: RunSamples =
    data.acceleration === undefined ? data.samples : { ...data.samples, [ACCELERATION]: data.acceleration };
  const byDistance = against === 'distance' && hasData(data.alongM);
  const places = byDistance ? data.alongM! : time;
  const placeOf = (timeS: number, index: number | null = null): number =>
    !byDistance ? timeS : index === null ? placeAt(time, places, timeS) : (places[index] ?? NaN);
  const last = time.length - 1;
  // A clock that steps back may begin or end within the times of the run.
  const [lowS, highS] = extent(time);
  const fromS = Math.max(options.fromS ?? -Infinity, lowS ?? NaN);
  const toS = Math.min(options.toS ?? Infinity, highS ?? NaN);
  const from = placeOf(fromS, options.fromS === undefined ? 0 : null);
  const to = placeOf(toS, options.toS === undefined ? last : null);
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
      const thinned = downSample(places, samples[channel]!, from, to, Math.floor(plot));
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

  const inPart = (place: number): boolean => place >= from && place <= to;
  const moments = momentsOf(data).filter(({ timeS, index }) => inPart(placeOf(timeS, index)));
  const zero = zeroOf(momentsOf(data), fromS);
  const zeroPlace = byDistance ? (data.podTimeS === null ? from : 0) : zero.timeS;
  const zeroName = byDistance
    ? data.podTimeS === null
      ? 'run from the start of the part shown'
      : 'run from the POD'
    : zero.name;
  const xs = moments.map(({ timeS, index }) => x(placeOf(timeS, index)));
  const labels = moments.map(({ label }) => textWidth(label, LETTER, 'bold') + 10);
  const labelXs = shiftApart(xs, labels, LEFT, LEFT + plot);
  const upright = (top: number, bottom: number): Shape[] =>
    moments.map(({ ink, dash }, i) => line([xs[i]!, top], [xs[i]!, bottom], pen(ink, 1.4, dash)));
  const pauses = (faults?.gaps ?? []).flatMap(([a, b]) => {
    const after = time.findIndex((each, i) => i > 0 && each === b && time[i - 1] === a);
    const [left, right] = [Math.max(placeOf(a, after - 1), from), Math.min(placeOf(b, after), to)];
    return right > left ? [[x(left), Math.max(1, x(right) - x(left))] as const] : [];
  });
  const steps = (faults?.backward ?? []).map((index) => places[index]!).filter(inPart);
  const faultShapes = (top: number, bottom: number): Shape[] => [
    ...pauses.map(([left, wide]) => box(left, top, wide, bottom - top, { fill: 'warn', fillOpacity: 0.16 })),
    ...steps.map((place) => line([x(place), top], [x(place), bottom], pen('warn', 1.2, [1.5, 2.5]))),
  ];
  const shownSlack = slack.filter(({ timeS, index }) => inPart(placeOf(timeS, index)));

  let y = HEAD;
  let firstTop = NaN;
  const drawn = panels.map((panel): Shape => {
    const frame = { x: LEFT, width: plot, y, height: panelHeight, margin };
    const top = y + panelHeadHeight(panel, frame, system);
    y = top + panelHeight + PANEL_GAP;
    if (Number.isNaN(firstTop)) firstTop = top;
    const { shapes } = drawPanel(panel, frame, [LEFT, LEFT + plot], system);
    return {
      type: 'group',
      label: panel.title,
      shapes: [...faultShapes(top, top + panelHeight), ...shapes, ...upright(top, top + panelHeight)],
    };
  });

  const scale = scaleOf(byDistance ? 'alongTrack' : 'time', system);
  const perUnit = byDistance ? 1 / scale.toShown(1) : to - from > LONG_S ? 60 : 1;
  const unit = byDistance ? scale.unitLabel : perUnit === 60 ? 'min' : 's';
  const axis = byDistance ? 'Distance' : 'Time';
  const shown = [(from - zeroPlace) / perUnit, (to - zeroPlace) / perUnit] as const;
  const marks = ticks(shown[0], shown[1], Math.max(3, Math.floor(plot / 70)));
  const dropped = places.filter(inPart).length > 2 * Math.floor(plot);
  const note = [
    slackWords(shownSlack) && `${slackWords(shownSlack)}.`,
    faultWords(faults),
    dropped ? 'Thinned for drawing: lowest and highest value of each step are kept.' : '',
  ]
    .filter(Boolean)
    .join(' ');
  const noteLines = wrapText(note, width - 16, LETTER);
  return {
    width,
    height: y + 46 + noteLines.length * 14,
    title: `Event recorder, ${name}`,
    description: [
      `${axis} in ${unit} ${zeroName}, ${scale.text(Math.round(shown[0]))} to ${scale.text(Math.round(shown[1]))}.`,
      ...groups.map(
        (group, g) =>
          `${group.title}: ${group.looks.map((look, i) => channelWords(look.label, group.scale, panels[g]!.series[i]!.values, system)).join('; ')}.`,
      ),
      ...(data.podTimeS === null || data.podPlacedBy === undefined ? [] : [`POD: ${data.podPlacedBy}`]),
      ...(authorisedSpeedMs === null ? [] : ['The authorised speed is drawn as a limit.']),
      note,
    ]
      .filter(Boolean)
      .join(' '),
    shapes: [
      ...moments.flatMap(({ label, ink, dash }, i) => [
        line([xs[i]!, 18], [xs[i]!, HEAD + 2], pen(ink, 1.4, dash)),
        words(labelXs[i]!, 14, label, { anchor: 'middle', bold: true, ink }),
      ]),
      ...drawn,
      ...shownSlack.flatMap((event) => slackSign(event, x(placeOf(event.timeS, event.index)), firstTop + 6)),
      line([LEFT, y], [LEFT + plot, y], pen('ink', 1)),
      ...marks.flatMap((tick) => {
        const at = x(tick * perUnit + zeroPlace);
        const text = `${tick > 0 ? '+' : ''}${scale.text(tick)}`;
        return [
          line([at, y], [at, y + 5], pen('ink', 1)),
          words(Math.min(at, width - textWidth(text, LETTER) / 2 - 1), y + 17, text, { anchor: 'middle' }),
        ];
      }),
      words(LEFT, y + 33, `${axis}, ${unit} ${zeroName}`, { bold: true }),
      ...lines(8, y + 52, noteLines, { ink: 'faint' }),
    ],
  };
}
