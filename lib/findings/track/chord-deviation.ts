import { toCanonical } from '../../readings/convert';
import type { RuleQuantityId } from '../../rules/rule-quantity';
import { deviationFromUniformMethod } from '../../track/deviation';
import { distinct } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';
import { gathered } from '../gathered';
import { checkAll } from '../rules-in-force';
import { stationColumn } from '../station-column';
import { atStations, type AtStations } from './at-station';
import { beforePodFinding } from './before-pod';
import { lineRailRemark } from './line-rail';
import { columnDeviations, greatestDeviation, spacingRemarks } from './uniform';
import { worstFinding } from './worst';

type Chord = {
  readonly what: string;
  readonly name: string;
  readonly quantity: string;
  readonly slot: string;
  readonly limits: RuleQuantityId;
  /** Points of the nine-point average: a quarter of the chord apart. */
  readonly pointsM: number;
  /** Line is taken on one rail of the two, which the finding then names. */
  readonly onLineRail: boolean;
  /** Not asked for: found only where somebody read it. */
  readonly onlyWhereRead?: boolean;
};

export const QUARTER_62_M = toCanonical(15.5, 'ft', 'alongTrack');
export const QUARTER_31_M = toCanonical(7.75, 'ft', 'alongTrack');

const CHORDS: readonly Chord[] = [
  {
    what: 'alinement62',
    name: 'Alinement, 62-ft chord',
    quantity: 'midOrdinate62',
    slot: '',
    limits: 'alinement62',
    pointsM: QUARTER_62_M,
    onLineRail: true,
  },
  {
    what: 'alinement31',
    name: 'Alinement, 31-ft chord',
    quantity: 'midOrdinate31',
    slot: '',
    limits: 'alinement31',
    pointsM: QUARTER_31_M,
    onLineRail: true,
  },
  ...(['left', 'right'] as const).map((side) => ({
    what: `profile62${side === 'left' ? 'Left' : 'Right'}`,
    name: `Profile of the ${side} rail, 62-ft chord`,
    quantity: 'profile62',
    slot: side,
    limits: 'profile62' as const,
    pointsM: QUARTER_62_M,
    onLineRail: false,
  })),
  ...(['left', 'right'] as const).map((side) => ({
    what: `profile31${side === 'left' ? 'Left' : 'Right'}`,
    name: `Profile of the ${side} rail, 31-ft chord`,
    quantity: 'profile31',
    slot: side,
    limits: 'profile31' as const,
    pointsM: QUARTER_31_M,
    onLineRail: false,
    onlyWhereRead: true,
  })),
];

/** Alinement and profile: deviation of mid-ordinates from uniform, per station and worst. */
export const chordDeviationFindings = (context: Context): readonly Finding[] =>
  gathered(
    CHORDS.filter(({ onlyWhereRead, quantity }) => !onlyWhereRead || context.read.anyRead(quantity)).map(
      (chord) => forChord(context, chord),
    ),
  );

function forChord(context: Context, chord: Chord): readonly Finding[] {
  const column = stationColumn(context, chord.quantity, chord.slot);
  const deviations = columnDeviations(context, column, chord.pointsM);
  const limits = context.rules.trackLimits(chord.limits);
  const of: AtStations = {
    what: chord.what,
    title: `${chord.name}, from uniform, station `,
    method: deviationFromUniformMethod,
    dimension: 'crossLength',
  };
  const worst = worstFinding(
    context,
    {
      part: 'track',
      method: deviationFromUniformMethod,
      what: `${chord.what}Worst`,
      title: `${chord.name}, greatest deviation from uniform`,
      subject: null,
      remarks: distinct([
        chord.onLineRail ? lineRailRemark(context) : '',
        'Uniform is the nine-station average, an adopted method for classes 1 to 5.',
        ...column.remarks,
        ...spacingRemarks(deviations),
      ]),
    },
    greatestDeviation(deviations),
    {
      limits: chord.limits,
      missing: `${chord.name.toLowerCase()}, at three or more undisturbed stations in a row`,
    },
  );
  return [
    worst,
    beforePodFinding(context, chord),
    ...atStations(of, context, deviations.taken, ({ value, u }) => checkAll(limits, value, u)),
  ];
}
