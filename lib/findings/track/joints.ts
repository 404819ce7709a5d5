import type { RuleQuantityId } from '../../rules/rule-quantity';
import { asReadMethod } from '../as-read';
import type { Context } from '../context';
import type { Finding } from '../finding';
import { checkAll } from '../rules-in-force';
import { stationColumn } from '../station-column';
import { atStations, type AtStations } from './at-station';
import { largestOf, worstFinding } from './worst';

type Step = {
  readonly quantity: string;
  readonly limits: RuleQuantityId;
  readonly what: string;
  readonly title: string;
};

const STEPS: readonly Step[] = [
  {
    quantity: 'mismatchTread',
    limits: 'railEndMismatchTread',
    what: 'mismatchTread',
    title: 'Rail end mismatch on the tread',
  },
  {
    quantity: 'mismatchGauge',
    limits: 'railEndMismatchGauge',
    what: 'mismatchGauge',
    title: 'Rail end mismatch on the gauge side',
  },
];

const SIDES = ['left', 'right'] as const;

/** Steps at rail joints, per station and rail, and the greatest; nothing where none was read. */
export const jointFindings = (context: Context): readonly Finding[] =>
  STEPS.filter(({ quantity }) => context.read.anyRead(quantity)).flatMap((step) =>
    SIDES.flatMap((side) => ofRail(context, step, side)),
  );

function ofRail(
  context: Context,
  { quantity, limits, what, title }: Step,
  side: 'left' | 'right',
): readonly Finding[] {
  const column = stationColumn(context, quantity, side);
  if (column.count === 0 && column.leftOut.every((why) => why === null)) return [];
  const of = `${what}${side === 'left' ? 'Left' : 'Right'}`;
  const inForce = context.rules.trackLimits(limits);
  const each: AtStations = {
    what: of,
    title: `${title}, ${side} rail, station `,
    method: asReadMethod,
    dimension: 'crossLength',
  };
  return [
    worstFinding(
      context,
      {
        part: 'track',
        method: asReadMethod,
        what: `${of}Worst`,
        title: `${title}, ${side} rail, greatest`,
        subject: null,
        remarks: column.remarks,
      },
      largestOf(column.at, (value) => value),
      { limits, missing: `${title.toLowerCase()}, ${side} rail, at an undisturbed station` },
    ),
    ...atStations(
      each,
      context,
      (index) => column.at[index],
      ({ value, u }) => checkAll(inForce, value, u),
    ),
  ];
}
