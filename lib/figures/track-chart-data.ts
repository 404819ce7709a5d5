import { standing } from '../case/current';
import { facingTravel } from '../case/facing';
import type { CaseRecord } from '../case/record';
import { toCanonical } from '../readings/convert';
import { excessBeyond, type ClassLimit } from '../rules/apply';
import type { RuleQuantityId } from '../rules/rule-quantity';
import { curvatureFromMidOrdinate, RULE_OF_THUMB_CHORD_M } from '../track/curvature';
import { deviationsFromUniform, spreadOver, UNIFORM_STATIONS } from '../track/deviation';
import type { LinePart } from '../track/segments';
import { caseMarks, systemOf } from './case-marks';
import { inchText } from './pieces/axis';
import type { Panel, PanelLimit, Series } from './pieces/panel';
import { standingValues } from './standing-values';
import type { ChartVehicle, TrackChartData } from './track-chart';

/** Which limits to draw, such as those of lib/findings/rules-in-force. */
export type ChartLimits = {
  /** "Class 3, 49 CFR part 213"; '' when nothing is compared. */
  readonly from: string;
  readonly of: (quantity: RuleQuantityId) => readonly ClassLimit[];
  /** Tangents, transitions and curves of the line, where they could be told apart. */
  readonly parts?: readonly LinePart[];
  /** Fewest sound ties allowed at each station, in order of position; NaN where there is no limit. */
  readonly leastTies?: readonly number[];
  /** Curvature at each station from whatever chord was read there, 1/m; NaN where none was. */
  readonly curvatures?: readonly number[];
};

export const NO_LIMITS: ChartLimits = { from: '', of: () => [] };

/** A quarter of the 62-ft chord. */
const QUARTER_CHORD_M = toCanonical(15.5, 'ft', 'alongTrack');
const STANDARD_GAUGE_MM = toCanonical(56.5, 'in', 'crossLength');
type Column = { readonly values: number[]; readonly hollow: boolean[] };

/** A station counts as beyond when any of the limits is exceeded by the value as read. */
const beyond = (values: readonly number[], limits: readonly ClassLimit[]): boolean[] =>
  values.map(
    (value) =>
      Number.isFinite(value) &&
      limits.some((limit) =>
        limit.limit.strict ? excessBeyond(value, limit) > 0 : excessBeyond(value, limit) >= 0,
      ),
  );

/**
 * The chart's data from the record: stations with a distance from the POD, in order; readings as
 * they stand, the disturbed ones marked. Curvature is each station's own 62-ft mid-ordinate as
 * R = c²/(8m); under-load gauge adds the sideways movement seen on both rails (49 CFR 213.13).
 * Uniform alinement is the nine-station average of undisturbed, resampled where they do not stand a quarter of the chord apart, an adopted
 * method below class 6 (49 CFR 213.327).
 */
export function trackChartData(asEntered: CaseRecord, limits: ChartLimits = NO_LIMITS): TrackChartData {
  const record = facingTravel(asEntered);
  const system = systemOf(record);
  const parts = limits.parts ?? [];
  const read = standingValues(record);
  const stations = standing(record, 'station')
    .flatMap((station) => {
      const position = read(station.id, 'stationPosition');
      return position === null ? [] : [{ id: station.id, positionM: position.value }];
    })
    .sort((a, b) => a.positionM - b.positionM);
  const positionsM = stations.map((station) => station.positionM);

  const column = (quantity: string, slot = ''): Column => {
    const shown = stations.map((station) => read(station.id, quantity, slot));
    return {
      values: shown.map((each) => each?.value ?? NaN),
      hollow: shown.map((each) => each?.sound === false),
    };
  };
  const combine = (columns: readonly Column[], by: (values: readonly number[]) => number): Column => ({
    values: stations.map((_, i) => by(columns.map((each) => each.values[i]!))),
    hollow: stations.map((_, i) => columns.some((each) => each.hollow[i])),
  });
  const text = (mm: number): string =>
    system === 'us' ? `${inchText(mm / 25.4)} in` : `${Math.round(mm)} mm`;
  const straight = (quantity: RuleQuantityId): PanelLimit[] =>
    limits.of(quantity).map(({ limit, value }) => ({
      sense: limit.sense,
      value,
      label: `${limit.sense === 'max' ? 'most' : 'least'} ${text(value)}`,
    }));
  /** A limit to either side of zero, or of a line that the value should follow. */
  const around = (found: readonly ClassLimit[], uniform: readonly number[] | null): PanelLimit[] =>
    found.flatMap(({ value }) => {
      const shift = (by: number): number | number[] =>
        uniform === null ? by : uniform.map((each) => each + by);
      const of = uniform === null ? '' : ' of uniform';
      return [
        { sense: 'max', value: shift(value), label: `+${text(value)}${of}` },
        { sense: 'min', value: shift(-value), label: `−${text(value)}${of}` },
      ] as const;
    });
  const series = (
    label: string,
    from: Column,
    looks: Omit<Series, 'label' | 'values' | 'hollow'>,
  ): Series => ({
    label,
    values: from.values,
    hollow: from.hollow,
    ...looks,
  });

  const gauge = column('gauge');
  const moved = combine(
    [gauge, column('lateralMovement', 'left'), column('lateralMovement', 'right')],
    (parts) =>
      parts.slice(1).some(Number.isFinite)
        ? parts[0]! + parts.slice(1).reduce((sum, each) => sum + (Number.isFinite(each) ? each : 0), 0)
        : NaN,
  );
  const crosslevel = column('crosslevel');
  const offset62 = column('midOrdinate62');
  const soundOffsets = offset62.values.map((value, i) => (offset62.hollow[i] ? NaN : value));
  const deviations = deviationsFromUniform(
    soundOffsets,
    UNIFORM_STATIONS,
    spreadOver(positionsM, QUARTER_CHORD_M),
  );
  const uniform = deviations.map((each) => each?.uniform ?? NaN);
  const alinementLimits = limits.of('alinement62');
  const profile = [column('profile62', 'left'), column('profile62', 'right')] as const;
  const profileLimits = limits.of('profile62');
  const curved = record.fields.alignment === 'curveLeft' || record.fields.alignment === 'curveRight';
  const crosslevelLimits = curved ? [] : limits.of('crosslevelTangent');
  /** Of a curve: no more than so much elevation, and no more than so much the wrong way. */
  const elevationLimits = curved ? limits.of('elevationMax') : [];
  const reverseLimits = curved ? limits.of('crosslevelReverseOnCurve') : [];
  const other = column('midOrdinateOther');
  const byOther = !offset62.values.some(Number.isFinite) && other.values.some(Number.isFinite);
  const soundTies = column('soundTies');
  const leastTies = limits.leastTies ?? [];
  const looseLeft = column('fasteningsLoose', 'left');
  const looseRight = column('fasteningsLoose', 'right');

  const panels: Panel[] = [
    {
      title: 'Gauge',
      scale: 'crossLength',
      limits: straight('gauge'),
      reference: { value: STANDARD_GAUGE_MM, label: `standard ${text(STANDARD_GAUGE_MM)}` },
      series: [
        series('standing', gauge, {
          ink: 'seriesA',
          marker: 'dot',
          beyond: beyond(gauge.values, limits.of('gauge')),
        }),
        series('with movement under load', moved, {
          ink: 'seriesB',
          marker: 'triangle',
          dash: [5, 3],
          beyond: beyond(moved.values, limits.of('gaugeUnderLoad')),
        }),
      ],
    },
    {
      title: 'Crosslevel',
      scale: 'crossLength',
      includeZero: true,
      limits: [
        ...around(crosslevelLimits, null),
        ...elevationLimits.map(({ value }) => ({
          sense: 'max' as const,
          value,
          label: `most ${text(value)}`,
        })),
        ...reverseLimits.map(({ value }) => ({
          sense: 'min' as const,
          value: -value,
          label: `−${text(value)} reverse`,
        })),
      ],
      note: curved ? 'elevation; up: outer rail higher' : 'up: left rail higher',
      series: [
        series('crosslevel', crosslevel, {
          ink: 'seriesC',
          marker: 'square',
          beyond: either(
            beyond(crosslevel.values, [...crosslevelLimits, ...elevationLimits]),
            beyond(
              crosslevel.values.map((value) => -value),
              reverseLimits,
            ),
          ),
        }),
      ],
    },
    byOther
      ? {
          title: 'Alinement, other chord',
          scale: 'crossLength',
          series: [series('offset', other, { ink: 'seriesA', marker: 'dot' })],
        }
      : {
          title: 'Alinement, 62-ft chord',
          scale: 'crossLength',
          limits: around(alinementLimits, uniform),
          series: [
            series('offset', offset62, {
              ink: 'seriesA',
              marker: 'dot',
              beyond: beyond(
                deviations.map((each) => each?.deviation ?? NaN),
                alinementLimits,
              ),
            }),
            { label: 'uniform', values: uniform, ink: 'ink', marker: null, dash: [2, 2] },
          ],
        },
    {
      title: 'Profile, 62-ft chord',
      scale: 'crossLength',
      includeZero: true,
      limits: around(profileLimits, null),
      note: 'up: middle low',
      series: [
        series('left rail', profile[0], {
          ink: 'seriesA',
          marker: 'dot',
          beyond: beyond(profile[0].values, profileLimits),
        }),
        series('right rail', profile[1], {
          ink: 'seriesB',
          marker: 'triangle',
          dash: [5, 3],
          beyond: beyond(profile[1].values, profileLimits),
        }),
      ],
    },
    {
      title: 'Curvature',
      scale: 'curvature',
      includeZero: true,
      series: [
        byOther
          ? {
              label: 'from the offsets',
              values: limits.curvatures ?? [],
              ink: 'seriesC' as const,
              marker: 'diamond' as const,
            }
          : series(
              'from the 62-ft offset',
              combine([offset62], ([offset]) =>
                Number.isFinite(offset) ? curvatureFromMidOrdinate(offset!, RULE_OF_THUMB_CHORD_M) : NaN,
              ),
              { ink: 'seriesC', marker: 'diamond' },
            ),
        ...(parts.length === 0
          ? []
          : [
              {
                label: 'fitted',
                values: positionsM.map((at) => fittedAt(parts, at)),
                ink: 'ink' as const,
                marker: null,
                dash: [6, 2],
              },
            ]),
      ],
    },
    {
      title: 'Ties and fastenings in 39 ft',
      scale: 'count',
      includeZero: true,
      limits: soundTies.values.some(Number.isFinite) ? tieBand(leastTies) : [],
      series: [
        ...(soundTies.values.some(Number.isFinite)
          ? [
              series('sound ties', soundTies, {
                ink: 'seriesC',
                marker: 'square',
                beyond: soundTies.values.map((value, i) => value < (leastTies[i] ?? NaN)),
              }),
            ]
          : []),
        series('defective ties', column('defectiveTies'), { ink: 'seriesA', marker: null, style: 'bars' }),
        series(
          'fastenings loose, both rails',
          combine([looseLeft, looseRight], ([l, r]) => sumOf(l!, r!)),
          {
            ink: 'seriesB',
            marker: null,
            style: 'bars',
          },
        ),
      ],
    },
  ];

  return {
    system,
    positionsM,
    panels,
    marks: caseMarks(record).filter((mark) => Number.isFinite(mark.fromM)),
    vehicles: derailedVehicles(record, (id) => read(id, 'leadingAxleAt')?.value ?? NaN),
    limitsFrom: limits.from,
    remarks: [
      ...(uniform.some(Number.isFinite)
        ? [
            'Uniform: average of nine points 15 ft 6 in apart, from undisturbed stations only; an adopted method below class 6.',
          ]
        : []),
      ...(deviations.some((each) => each?.resampled)
        ? ['Where a point lies between two stations, uniform is read off the line joining them.']
        : []),
      ...(parts.length > 0 ? ['Tangents, transitions and curves as fitted to the curvature readings.'] : []),
    ],
  };
}

const either = (a: readonly boolean[], b: readonly boolean[]): boolean[] =>
  a.map((each, i) => each || b[i] === true);

/** The fewest sound ties allowed, as one line where it is the same at every station. */
function tieBand(least: readonly number[]): readonly PanelLimit[] {
  const known = [...new Set(least.filter(Number.isFinite))];
  const [only] = known;
  if (only === undefined) return [];
  return known.length === 1
    ? [{ sense: 'min', value: only, label: `least ${only} sound` }]
    : [{ sense: 'min', value: least, label: 'least sound ties' }];
}

/** Sum of what was counted; nothing when neither was. */
const sumOf = (a: number, b: number): number =>
  Number.isFinite(a) || Number.isFinite(b)
    ? (Number.isFinite(a) ? a : 0) + (Number.isFinite(b) ? b : 0)
    : NaN;

/** Derailed vehicles whose leading axle was located, by their place in the train and their mark. */
const derailedVehicles = (record: CaseRecord, at: (id: string) => number): readonly ChartVehicle[] =>
  standing(record, 'vehicle').flatMap(({ id, fields }) =>
    fields.derailed === true && Number.isFinite(at(id))
      ? [{ label: [fields.position, fields.mark, fields.number].filter(Boolean).join(' '), atM: at(id) }]
      : [],
  );

/** The fitted curvature at a place; nothing beyond the stations it was fitted to. */
function fittedAt(parts: readonly LinePart[], atM: number): number {
  const part = parts.find(({ fromM, toM }) => atM >= fromM && atM <= toM);
  if (part === undefined) return NaN;
  const share = (atM - part.fromM) / (part.toM - part.fromM);
  return part.curvatureFromPerM + share * (part.curvatureToPerM - part.curvatureFromPerM);
}
