import { rolloverLimit, rolloverMethod } from '../../mechanics/rollover';
import { leverArms, leverArmsMethod, type BearingPlace, type LateralPlace } from '../../rail/lever-arms';
import { railSection } from '../../rail/sections';
import { distinct, measured, notMeasured, remarked, type Heading } from '../build';
import { standOf } from '../contact/stand';
import type { Context } from '../context';
import { draw } from '../draw';
import type { Finding, Method } from '../finding';
import { otherSide, type Side } from '../pod-sides';
import { railReading } from '../rail-place';
import type { Taken } from '../reading-index';

export const sectionRolloverMethod: Method = {
  ...rolloverMethod,
  id: 'rollover-from-section',
  name: 'Rail rollover limit from section, cant and running band',
  formula: `${rolloverMethod.formula} ${leverArmsMethod.formula}`,
  validRange: `${rolloverMethod.validRange} ${leverArmsMethod.validRange} Fasteners are taken to hold nothing.`,
  sources: [...rolloverMethod.sources, ...leverArmsMethod.sources],
};

type Rail = {
  readonly what: string;
  readonly title: string;
  readonly words: string;
  readonly side: Side | null;
  readonly lateral: LateralPlace;
};

/** L/V at which each rail rolls with no help from its fasteners, from section, cant, wear and running band. */
export function rolloverFindings(context: Context): readonly Finding[] {
  const { outer, flanging } = context.sides;
  const near = outer ?? flanging;
  return [
    {
      what: 'rolloverFlangingRail',
      title: 'Rollover limit of the high or flanging rail, L/V of a truck side',
      words: 'high (or flanging) rail',
      side: near,
      lateral: 'gaugeFace',
    } as const,
    {
      what: 'rolloverOtherRail',
      title: 'Rollover limit of the low or other rail, L/V of a truck side',
      words: 'low (or other) rail',
      side: near === null ? null : otherSide(near),
      lateral: 'topOfRail',
    } as const,
  ].map((rail) => limitOf(context, rail));
}

function limitOf(context: Context, { what, title, words, side, lateral }: Rail): Finding {
  const heading: Heading = { part: 'mechanics', method: sectionRolloverMethod, what, title, subject: null };
  if (side === null)
    return notMeasured(heading, ['which rail is the outer one, or on which the first mark lies']);
  const cant = railReading(context, side, 'railCant');
  if (cant === null) return notMeasured(heading, [`cant of the ${words} near the POD`]);
  const name = String(cant.rail.entity.fields.section ?? '');
  const section = railSection(name);
  if (section === null) return notMeasured(heading, [`section of the ${words}, one of those in the table`]);
  const { id } = cant.rail.entity;
  const loss = context.read.take('rail', id, 'verticalLoss');
  const band = context.read.state('rail', id, 'contactBand');
  const traced = band === null ? tracedBearing(context, side) : null;
  const bearing = traced ?? bearingOf(band?.state);
  const inputs: readonly [Taken, ...Taken[]] = loss === null ? [cant.taken] : [cant.taken, loss];
  const { taken } = draw(
    (v) => rolloverLimit(leverArms(section, bearing.place, lateral, v[1] ?? 0), v[0] ?? NaN),
    inputs,
    context.seed,
  );
  const [first, ...rest] = taken.readings;
  return measured(
    {
      ...heading,
      remarks: distinct([
        `Section ${section.id}.`,
        bearing.remark,
        ...(loss === null ? ['Wear of the top of the head not read: taken as none.'] : []),
        'Holds for the sum over a truck side, not for one wheel.',
      ]),
    },
    'ratio',
    remarked(
      { ...taken, readings: [first, ...rest, ...(band?.readings ?? []), ...(traced?.readings ?? [])] },
      ...(band?.remarks ?? []),
    ),
  );
}

/** Farther than this from the middle of the head, about four tenths of half its width, the load bears at a side. Engineering judgement. */
const OFF_THE_MIDDLE_MM = 15;

/** Where the load bears by the outlines of wheel and rail, when nobody recorded the running band. */
function tracedBearing(
  context: Context,
  side: Side,
): { readonly place: BearingPlace; readonly remark: string; readonly readings: readonly string[] } | null {
  const stand = standOf(context);
  if (stand.kind === 'missing') return null;
  const { meanXMm } = stand.standing[side];
  const place: BearingPlace =
    meanXMm > OFF_THE_MIDDLE_MM ? 'fieldSide' : meanXMm < -OFF_THE_MIDDLE_MM ? 'gaugeCorner' : 'midHead';
  const words = {
    fieldSide: 'on the field side',
    gaugeCorner: 'at the gauge corner',
    midHead: 'at the middle',
  };
  return {
    place,
    remark: `Running band not recorded: vertical load taken ${words[place]} of the head, where the outlines of wheel and rail touch on average between the middle of the track and the flanging rail.`,
    readings: stand.readings.filter((id) => context.record.traces.some((trace) => trace.id === id)),
  };
}

/** Where the vertical load is taken to bear, from the running band as recorded. */
export function bearingOf(band: string | undefined): {
  readonly place: BearingPlace;
  readonly remark: string;
} {
  switch (band) {
    case 'gaugeCorner':
      return {
        place: 'gaugeCorner',
        remark: 'Vertical load at the gauge corner, as the running band shows.',
      };
    case 'crown':
      return {
        place: 'midHead',
        remark: 'Vertical load at the middle of the head, as the running band shows.',
      };
    case 'fieldSide':
      return { place: 'fieldSide', remark: 'Vertical load on the field side, as the running band shows.' };
    default:
      return {
        place: 'midHead',
        remark: 'Running band not recorded: vertical load taken at the middle of the head.',
      };
  }
}
