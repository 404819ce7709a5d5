import { toCanonical } from '../../readings/convert';
import type { RuleQuantityId } from '../../rules/rule-quantity';
import { deviationFromUniformMethod } from '../../track/deviation';
import { distinct, measured } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';
import { checkAll } from '../rules-in-force';
import { stationColumn } from '../station-column';
import { beforePodFinding } from './before-pod';
import { deviationAt, spacingRemarks, unevenRemarks } from './uniform';
import { largest, worstFinding, type At } from './worst';

type Chord = {
  readonly what: string;
  readonly name: string;
  readonly quantity: string;
  readonly slot: string;
  readonly limits: RuleQuantityId;
  /** Stations the nine-point average is taken over: a quarter of the chord apart. */
  readonly spacingM: number;
  readonly spacing: string;
  readonly remark: string;
};

const QUARTER_62 = { spacingM: toCanonical(15.5, 'ft', 'alongTrack'), spacing: '15 ft 6 in' } as const;
const QUARTER_31 = { spacingM: toCanonical(7.75, 'ft', 'alongTrack'), spacing: '7 ft 9 in' } as const;
const LINE_RAIL = 'Line taken on the outer rail of a curve, on the left rail of tangent.';

const CHORDS: readonly Chord[] = [
  {
    what: 'alinement62',
    name: 'Alinement, 62-ft chord',
    quantity: 'midOrdinate62',
    slot: '',
    limits: 'alinement62',
    ...QUARTER_62,
    remark: LINE_RAIL,
  },
  {
    what: 'alinement31',
    name: 'Alinement, 31-ft chord',
    quantity: 'midOrdinate31',
    slot: '',
    limits: 'alinement31',
    ...QUARTER_31,
    remark: LINE_RAIL,
  },
  ...(['left', 'right'] as const).map((side) => ({
    what: `profile62${side === 'left' ? 'Left' : 'Right'}`,
    name: `Profile of the ${side} rail, 62-ft chord`,
    quantity: 'profile62',
    slot: side,
    limits: 'profile62' as const,
    ...QUARTER_62,
    remark: '',
  })),
];

/** Alinement and profile: deviation of mid-ordinates from uniform, per station and worst. */
export const chordDeviationFindings = (context: Context): readonly Finding[] =>
  CHORDS.flatMap((chord) => forChord(context, chord));

function forChord(context: Context, chord: Chord): readonly Finding[] {
  const column = stationColumn(context, chord.quantity, chord.slot);
  const deviations = deviationAt(context, column);
  const limits = context.rules.trackLimits(chord.limits);
  const all: At[] = [];
  const perStation: Finding[] = [];
  context.stations.forEach((station, index) => {
    const taken = deviations.at[index];
    if (!taken) return;
    all.push({ index, taken });
    perStation.push(
      measured(
        {
          part: 'track',
          method: deviationFromUniformMethod,
          what: chord.what,
          title: `${chord.name}, from uniform, station ${station.name}`,
          subject: { kind: 'station', id: station.id },
        },
        'crossLength',
        taken,
        checkAll(limits, taken.value, taken.u),
      ),
    );
  });
  const worst = worstFinding(
    context,
    {
      part: 'track',
      method: deviationFromUniformMethod,
      what: `${chord.what}Worst`,
      title: `${chord.name}, greatest deviation from uniform`,
      subject: null,
      remarks: distinct([
        chord.remark,
        'Uniform is the nine-station average, an adopted method for classes 1 to 5.',
        ...column.remarks,
        ...unevenRemarks(deviations),
        ...(all.length > 0 ? spacingRemarks(deviations, chord.spacingM, chord.spacing) : []),
      ]),
    },
    largest(all, Math.abs),
    {
      limits: chord.limits,
      missing: `${chord.name.toLowerCase()}, at three or more evenly spaced undisturbed stations in a row`,
    },
  );
  return [worst, beforePodFinding(context, chord), ...perStation];
}
