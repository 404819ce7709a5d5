import type { Method } from '../findings/finding';
import { toCanonical } from '../readings/convert';

/** Joints closer together than this are not staggered (49 CFR 213.63(a), footnote 2). */
export const LEAST_STAGGER_M = toCanonical(10, 'ft', 'alongTrack');

/** Seven low joints make the six differences the footnote speaks of. */
export const LOW_JOINTS = 7;

const SAME_POSITION_M = 0.001;

export type Joint = {
  readonly positionM: number;
  /** Null where joints stand on both rails: not staggered. */
  readonly rail: 'left' | 'right' | null;
  /** Left rail above right; NaN where not read. */
  readonly leftHighMm: number;
};

/**
 * The six differences at seven consecutive joints, each positive as far as the rail with the joint
 * lies lower at its joint than at the next: leftHigh(k+1) − leftHigh(k) where joint k is on the left
 * rail, the reverse where it is on the right. Units as given. Seven values, else NaN in the answer.
 */
export function lowJointDifferences(
  leftHighMm: ArrayLike<number>,
  firstRail: 'left' | 'right',
): readonly number[] {
  return Array.from({ length: LOW_JOINTS - 1 }, (_, k) => {
    const change = (leftHighMm[k + 1] ?? NaN) - (leftHighMm[k] ?? NaN);
    return (k % 2 === 0) === (firstRail === 'left') ? change : -change;
  });
}

/** The smallest of the six: more than the limit only when all six are. */
export const smallestDifference = (leftHighMm: ArrayLike<number>, firstRail: 'left' | 'right'): number =>
  Math.min(...lowJointDifferences(leftHighMm, firstRail));

/**
 * Where seven consecutive staggered joints begin (indices into the joints, in order of position):
 * on alternate rails, each 10 ft or more from the next, crosslevel read at every one. A joint
 * without crosslevel, or on both rails, ends a run: it is not passed over.
 */
export function staggeredRuns(joints: readonly Joint[]): readonly number[] {
  const starts: number[] = [];
  let length = 0;
  joints.forEach((joint, index) => {
    const previous = joints[index - 1];
    const usable = joint.rail !== null && Number.isFinite(joint.leftHighMm);
    const follows =
      previous !== undefined &&
      length > 0 &&
      previous.rail !== joint.rail &&
      joint.positionM - previous.positionM >= LEAST_STAGGER_M - SAME_POSITION_M;
    length = usable ? (follows ? length + 1 : 1) : 0;
    if (length >= LOW_JOINTS) starts.push(index - LOW_JOINTS + 1);
  });
  return starts;
}

export const lowJointsMethod: Method = {
  id: 'staggered-low-joints',
  name: 'Seven low joints in a row on staggered-joint track',
  formula:
    'dₖ = change of crosslevel from joint k to joint k + 1, positive where the rail with joint k is low there; k = 1 … 6; the smallest of the six, and of all such runs of seven joints the one where it is greatest.',
  validRange:
    'Joints on alternate rails, 10 ft or more apart, crosslevel read at every one. A joint outside the regular spacing does not count under the rule and is to be left unmarked. Nothing is interpolated: every joint needs a station of its own.',
  sources: [
    { text: '49 CFR 213.63(a), footnote 2 (staggered joints, classes 2 to 5)', status: 'published' },
    {
      text: 'Only differences in the direction that makes a low joint are counted',
      status: 'engineering judgement',
    },
  ],
};
