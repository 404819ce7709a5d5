import { unbalanceLateralKn, unbalanceLoadMethod, unbalanceShiftKn } from '../../mechanics/unbalance-load';
import { toCanonical } from '../../readings/convert';
import { standardUncertaintyFromHalfWidth } from '../../readings/uncertainty';
import { unbalanceMm } from '../../track/curving-speed';
import { measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import { draw } from '../draw';
import type { Finding, Method } from '../finding';
import { curveAtPod } from '../track/curving';
import { allOf } from './from-key-input';

/** Height of the centre of gravity above the rail heads: 60 in (empty, low) to 98 in (high cube, loaded). */
const GRAVITY_CENTRE = {
  key: 'assumed height of the centre of gravity',
  value: toCanonical(79, 'in', 'crossLength'),
  u: standardUncertaintyFromHalfWidth(toCanonical(19, 'in', 'crossLength')),
} as const;

export const unbalanceShareMethod: Method = {
  ...unbalanceLoadMethod,
  id: 'unbalance-load-share',
  name: 'Share of load and net lateral from unbalance',
  sources: [
    ...unbalanceLoadMethod.sources,
    { text: 'Centre of gravity 60 to 98 in above the rail', status: 'engineering judgement' },
  ],
};

/** An axle load of two makes each wheel's static load one, so that the shift comes out as a share of it. */
const AXLE_OF_TWO_UNIT_WHEELS = 2;

/** What unbalance alone moves between the wheels of an axle, and its net lateral, on a curve. */
export function unbalanceLoadFindings(context: Context): readonly Finding[] {
  if (context.alignment === 'tangent') return [];
  const at = curveAtPod(context);
  const needed = allOf({
    curvature: [at.curvature, 'curvature at the POD'],
    speed: [at.speed, 'speed at the POD'],
    elevation: [at.elevation, 'crosslevel at undisturbed stations near the POD'],
  });
  const heading = (what: string, title: string, remarks: readonly string[]): Heading => ({
    part: 'mechanics',
    method: unbalanceShareMethod,
    what,
    title,
    subject: null,
    remarks,
  });
  const shift = heading(
    'unbalanceShift',
    'Load moved to the high-rail wheel by unbalance, share of the wheel load',
    [
      'Quasi-static estimate; negative: the high rail is unloaded.',
      'Height of the centre of gravity not measured: 79 in taken, anywhere from 60 to 98 in.',
    ],
  );
  const lateral = heading(
    'unbalanceLateral',
    'Net lateral of an axle from unbalance, share of the axle load',
    [
      'Quasi-static estimate, positive outward. It is not the flange force: steering dominates in sharp curves.',
    ],
  );
  if ('missing' in needed) return [notMeasured(shift, needed.missing), notMeasured(lateral, needed.missing)];
  const { curvature, speed, elevation } = needed.all;
  const eu = (v: ArrayLike<number>): number => unbalanceMm(v[0] ?? NaN, v[1] ?? NaN, v[2] ?? NaN);
  const inputs = [curvature, speed, elevation] as const;
  return [
    measured(
      shift,
      'ratio',
      draw((v) => unbalanceShiftKn(AXLE_OF_TWO_UNIT_WHEELS, eu(v), v[3] ?? NaN), inputs, context.seed, [
        GRAVITY_CENTRE,
      ]).taken,
    ),
    measured(lateral, 'ratio', draw((v) => unbalanceLateralKn(1, eu(v)), inputs, context.seed).taken),
  ];
}
