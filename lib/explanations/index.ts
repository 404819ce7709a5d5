import type { Explanation, ExplanationId } from './explanation';
import { railRollover } from './rail-rollover';
import { somethingElse } from './something-else';
import { switchPointPick } from './switch-point-pick';
import { wheelClimb } from './wheel-climb';
import { wideGauge } from './wide-gauge';

/** The four that are weighed, and last the background; adding one is a file, its id, and this line. */
export const EXPLANATIONS: readonly Explanation[] = [
  wheelClimb,
  railRollover,
  wideGauge,
  switchPointPick,
  somethingElse,
];

const byId = new Map(EXPLANATIONS.map((explanation) => [explanation.id, explanation] as const));

/** The explanation of an id. */
export function explanationOf(id: ExplanationId): Explanation {
  const explanation = byId.get(id);
  if (explanation === undefined) throw new Error(`No explanation is called ${id}`);
  return explanation;
}
