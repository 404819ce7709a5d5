import { standing } from '../../case/current';
import {
  LOW_JOINTS,
  lowJointsMethod,
  smallestDifference,
  staggeredRuns,
  type Joint,
} from '../../track/low-joints';
import { measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import { draw } from '../draw';
import type { Finding } from '../finding';
import type { Taken } from '../reading-index';
import { checkAll } from '../rules-in-force';
import { stationColumn } from '../station-column';

type JointAt = { readonly name: string; readonly joint: Joint; readonly taken: Taken | null };

/** Stations marked as joints, in order of position, with crosslevel counted from the left rail. */
function jointsOf(context: Context): readonly JointAt[] {
  const marked = new Map<string, Joint['rail'] | 'both'>();
  for (const { id, fields } of standing(context.record, 'station')) {
    const { joint } = fields;
    if (joint === 'left' || joint === 'right' || joint === 'both') marked.set(id, joint);
  }
  if (marked.size === 0) return [];
  const crosslevel = stationColumn(context, 'crosslevel').at;
  const sign = (context.sides.outer ?? 'left') === 'left' ? 1 : -1;
  return context.stations.flatMap(({ id, name, positionM }, index): readonly JointAt[] => {
    const on = marked.get(id);
    if (on === undefined) return [];
    const taken = crosslevel[index] ?? null;
    const leftHighMm = taken === null ? NaN : sign * taken.value;
    return [{ name, taken, joint: { positionM, rail: on === 'both' ? null : on, leftHighMm } }];
  });
}

/** The check on harmonic roll: seven low joints in a row on staggered-joint track. */
export function lowJointFindings(context: Context): readonly Finding[] {
  const joints = jointsOf(context);
  const limits = context.rules.trackLimits('staggeredJoints');
  const heading: Heading = {
    part: 'track',
    method: lowJointsMethod,
    what: 'lowJoints',
    title: 'Smallest of the six crosslevel differences at seven low joints',
    subject: null,
  };
  let worst: { readonly start: number; readonly smallest: number } | null = null;
  for (const start of staggeredRuns(joints.map(({ joint }) => joint))) {
    const run = joints.slice(start, start + LOW_JOINTS).map(({ joint }) => joint.leftHighMm);
    const smallest = smallestDifference(run, joints[start]?.joint.rail ?? 'left');
    if (worst === null || smallest > worst.smallest) worst = { start, smallest };
  }
  if (worst === null) {
    return [
      notMeasured(heading, [
        'joints marked by rail, with crosslevel, at seven undisturbed stations in a row, staggered 10 ft or more',
      ]),
    ];
  }
  const { start } = worst;
  const run = joints.slice(start, start + LOW_JOINTS);
  const [first, ...others] = run.flatMap(({ taken }) => taken ?? []);
  if (first === undefined) return [];
  const firstRail = run[0]?.joint.rail ?? 'left';
  const sign = (context.sides.outer ?? 'left') === 'left' ? 1 : -1;
  const { taken } = draw(
    (levels) => {
      const leftHigh = Float64Array.from({ length: LOW_JOINTS }, (_, k) => sign * (levels[k] ?? NaN));
      return smallestDifference(leftHigh, firstRail);
    },
    [first, ...others],
    context.seed,
  );
  return [
    measured(
      {
        ...heading,
        remarks: [
          `From the joint at station ${run[0]?.name ?? '?'} to that at station ${run.at(-1)?.name ?? '?'}: of ${joints.length} joints marked, the seven in a row where it is greatest.`,
          ...context.rules.remarks,
        ],
      },
      'crossLength',
      taken,
      checkAll(limits, taken.value, taken.u),
    ),
  ];
}
